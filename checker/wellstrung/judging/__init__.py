"""judging."""
