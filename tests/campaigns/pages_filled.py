"""Every paper document of a folder of projects: how full its pages are, and which headings stand alone at the foot of one.

    .venv/bin/python tests/campaigns/pages_filled.py specs_demo/range specs_demo/tramway specs_demo/waterworks

Cards and label sheets are forms that are fitted to a sheet and have tests of their own. Ends with 0 when no page is to be mended.
"""

from __future__ import annotations

import sys
from datetime import UTC, datetime
from pathlib import Path

ROOT = Path(__file__).resolve().parents[2]
sys.path.insert(0, str(ROOT))

from specgen.checking import check  # noqa: E402
from specgen.documents.registry import KINDS  # noqa: E402
from specgen.printing.documents import Refused, print_documents  # noqa: E402
from tests.documents.filled_pages import pages_of  # noqa: E402

FORMS = {"job-card", "hazard-card", "label-sheet", "record-sheets"}


def main() -> int:
    kinds = [kind.name for kind in KINDS.values() if kind.about != "comparison" and kind.name not in FORMS]
    wrong = 0
    for folder in sys.argv[1:]:
        checked = check(Path(folder), datetime.now(UTC).date())
        for kind in kinds:
            try:
                printed = print_documents(checked, documents=[kind], formats=["pdf"])
            except Refused:
                continue
            for name, data in printed.items():
                pages = pages_of(data)
                said = pages.wrong()
                wrong += len(said)
                mean = sum(pages.shares) / len(pages.shares)
                print(f"{name}: {len(pages.shares)} pages, used to {mean:.0%}{''.join(f'; {one}' for one in said)}")
    print(f"{wrong} to be mended")
    return 1 if wrong else 0


if __name__ == "__main__":
    sys.exit(main())
