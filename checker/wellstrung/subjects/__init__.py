"""What a rule can look at: joins, parts, steps, needs and the piece itself.

A plan in; every subject out, found once.
"""
