"""Rules of the family `adhesive`."""
