"""The command line: thin, lazy, and plain about what went wrong.

Nothing here imports a service before a command runs, so that ``passagework --help``
answers at once; and of the commands only the one that is wanted is loaded.
"""
