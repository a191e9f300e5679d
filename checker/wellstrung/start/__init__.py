"""`start`: questions in trade words, and from the answers a commented plan that checks clean.

Answers go in, a plan as a dict with its comments comes out. Every figure beside the answers comes
from the checker, which checks the draft as it would check the file.
"""
