"""model."""
