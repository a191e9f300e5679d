"""Rules of the family `joining`."""
