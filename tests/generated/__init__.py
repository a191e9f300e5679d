"""A generator of whole right plans, for property tests and for golden runs."""
