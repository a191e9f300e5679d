"""The plan as the author means it.

A checked tree of nodes in; a `Plan` of parts, run, hung lines and steps out, or faults.
"""
