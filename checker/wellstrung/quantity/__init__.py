"""Values with a spread.

Leaves with named causes in; quantities with middle, likely and worst range and working out.
"""
