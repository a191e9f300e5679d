"""The command line, one module a command.

Arguments in; text on the terminal, files and an exit code out.
"""
