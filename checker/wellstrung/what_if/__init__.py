"""what_if."""
