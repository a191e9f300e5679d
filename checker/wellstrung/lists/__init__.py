"""What to buy and what to cut.

The quantities of one plan or many in; shopping lists and cutting lists out.
"""
