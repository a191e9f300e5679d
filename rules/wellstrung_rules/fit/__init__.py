"""Rules of the family `fit`."""
