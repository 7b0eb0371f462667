"""`python -m webapp`: runs the command line."""

import sys

from webapp.cli import main

if __name__ == "__main__":
    sys.exit(main())
