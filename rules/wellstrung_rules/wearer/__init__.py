"""Rules of the family `wearer`."""
