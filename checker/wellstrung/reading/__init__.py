"""Reads plans, drawers and benches.

Bytes in; a tree of nodes that know their line and column out, checked by the schema, or faults.
"""
