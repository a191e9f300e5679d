"""What every layer uses: places in a file, units, money, wording.

Plain text and numbers in; values, places and sentences out. Imports nothing else of the project.
"""
