"""Rules of the family `length`."""
