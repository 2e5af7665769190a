"""`python -m roomspec`."""

import sys

from roomspec.cli.main import main

if __name__ == "__main__":
    sys.exit(main())
