"""The formulas: plain functions of floats, usable as a library.

Lengths in mm, masses in g, forces in N, times in min; the same out, each with its source.
"""
