"""Judges one plan by all rules.

A file or a text in; a result of remarks, checks passed and checks left open out.
"""
