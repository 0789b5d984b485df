"""Where the self-contained folder starts, in the program and in its worker processes."""

import multiprocessing
import sys

from app.__main__ import main

if __name__ == "__main__":
    multiprocessing.freeze_support()  # a worker process does its work here, and ends
    sys.exit(main())
