"""Checks written plans of beaded pieces: what will not fit, hold or add up, and what would."""
