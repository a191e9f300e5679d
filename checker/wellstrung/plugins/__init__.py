"""What others can add.

Entry points and files of rules in; a record of all that is installed out, or a clear refusal.
"""
