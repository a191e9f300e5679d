"""derived."""
