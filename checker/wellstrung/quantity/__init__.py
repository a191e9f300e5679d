"""quantity."""
