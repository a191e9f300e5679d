"""Rules of the family `count`."""
