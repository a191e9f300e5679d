"""Rules of the family `hold`."""
