"""Whether a plan keeps what its maker set: limits of the bench file that no other rule has."""
