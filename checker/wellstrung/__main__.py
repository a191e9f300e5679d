"""`python -m wellstrung`."""

import sys

from wellstrung.cli import main

if __name__ == "__main__":
    sys.exit(main())
