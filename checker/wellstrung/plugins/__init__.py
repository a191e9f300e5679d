"""plugins."""
