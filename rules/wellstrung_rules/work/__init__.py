"""Rules of the family `work`."""
