"""subjects."""
