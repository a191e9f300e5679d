"""The named quantities of a plan.

A plan and a name such as `rope.outside` in; a quantity out, or the field that is missing.
"""
