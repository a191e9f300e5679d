"""lists."""
