"""Stitches: what a woven part measures and takes, one module a stitch.

A part of the plan in; its quantities out.
"""
