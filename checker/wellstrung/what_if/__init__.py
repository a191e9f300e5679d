"""What else would do.

A plan in; the same plan tried in other sizes, and parts in other sizes, out.
"""
