"""The work at the bench.

Steps and the maker's rates in; minutes, a schedule and an order that works out.
"""
