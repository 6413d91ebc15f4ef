"""`python -m specgen`, the same as the command `specgen`."""

from __future__ import annotations

import sys

from specgen.commands import main

if __name__ == "__main__":
    sys.exit(main())
