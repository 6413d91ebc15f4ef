"""Every kind of document held against the archival and the accessibility standard, by a validator that is not ours.

    .venv/bin/specgen render specs_demo/tramway --job tower-wagon-doors --out out
    .venv/bin/specgen compare OLDER specs_demo/tramway --notice out
    tests/pdf_validator/fetch.sh jars
    .venv/bin/python tests/campaigns/lasting_documents.py out --jars jars

Beside the folder of documents it judges a page with attachments and a date, and shows that the validator can fail: with one
finishing touch left out at a time it must name just the clauses that touch is for. qpdf checks the syntax of every file.
Ends with 0 when all is as it should be.
"""

from __future__ import annotations

import argparse
import subprocess
import sys
import tempfile
from collections.abc import Iterable
from datetime import UTC, datetime
from pathlib import Path
from unittest import mock

ROOT = Path(__file__).resolve().parents[2]
sys.path.insert(0, str(ROOT))

from specgen.documents.registry import KINDS  # noqa: E402
from specgen.rendering.attachments import Attachment  # noqa: E402
from specgen.rendering.pdf import write_pdf  # noqa: E402
from tests.pdf_validator.judge import CannotJudgeError, judge, told  # noqa: E402
from tests.rendering.conftest import filled  # noqa: E402

# The finishing touches, and the clauses (profile, clause, test) that fail without each.
LEFT_OUT = {
    "declare_accessible": {("ua1", "5", "1")},
    "mend_tags": {("ua1", "7.2", "20"), ("ua1", "7.5", "1")},
}
# The typesetter names the heading of the first column under a spanning one, of the second none.
SPANNING = (
    "<table><thead><tr><th>Part</th><th colspan=2>Least and most film</th></tr></thead>"
    "<tbody><tr><th>Rail</th><td>40 µm</td><td>60 µm</td></tr></tbody></table>"
)


def main() -> int:
    parser = argparse.ArgumentParser(description="Hold every kind of document against two standards.")
    parser.add_argument("folder", type=Path, help="what `specgen render` has written")
    parser.add_argument("--jars", type=Path, required=True, help="folder that tests/pdf_validator/fetch.sh has filled")
    asked = parser.parse_args()
    with tempfile.TemporaryDirectory() as place:
        try:
            wrong = _documents(asked.folder, asked.jars) + _finish(Path(place), asked.jars)
        except CannotJudgeError as why:
            print(why, file=sys.stderr)
            return 2
    for what in wrong:
        print(f"WRONG: {what}")
    return 1 if wrong else 0


def _documents(folder: Path, jars: Path) -> list[str]:
    """What is wrong with the documents of a folder, which must hold every kind there is."""
    # a form is drawn by its viewer: what is typed into it no standard of lasting pages can hold
    forms = [name for name, kind in KINDS.items() if kind.fields is not None]
    files = [file for file in sorted(folder.glob("*.pdf")) if not any(_is(file, name) for name in forms)]
    kinds = [name for name, kind in KINDS.items() if "pdf" in kind.formats and name not in forms]
    wrong = [f"{folder} holds no {name}" for name in kinds if not any(_is(file, name) for file in files)]
    wrong += _damaged(files)
    for verdict in judge(files, jars):
        failed = {(verdict.profile, one.clause, one.test) for one in verdict.failures}
        print(told(verdict))
        wrong += [f"{verdict.file}: {verdict.profile}"] if failed else []
    return wrong


def _is(file: Path, kind: str) -> bool:
    return file.name.endswith(f"-{kind}.pdf")


def _finish(place: Path, jars: Path) -> list[str]:
    """What is wrong with a finished page, and with pages one finishing touch of which was left out."""
    whole = _page(place / "finished.pdf")
    unfinished = {}
    for touch in LEFT_OUT:
        with mock.patch(f"specgen.rendering.pdf.{touch}"):
            unfinished[str(_page(place / f"without_{touch}.pdf"))] = touch
    wrong = _damaged([whole])
    failed: dict[str, set[tuple[str, str, str]]] = {str(whole): set(), **{name: set() for name in unfinished}}
    for verdict in judge(map(Path, failed), jars):
        failed[verdict.file] |= {(verdict.profile, one.clause, one.test) for one in verdict.failures}
    for name, clauses in failed.items():
        expected = LEFT_OUT[unfinished[name]] if name in unfinished else set()
        print(f"{Path(name).name}: fails {sorted(clauses) or 'nothing'}")
        if clauses != expected:
            wrong.append(f"{Path(name).name} should fail {sorted(expected) or 'nothing'}")
    return wrong


def _page(file: Path) -> Path:
    """The sample page of the tests, with a table more, two attachments and a date."""
    attachments = (
        Attachment("sources.json", b'{"film": "60 um"}', "application/json", "Source", "What it was made from"),
        Attachment("readings.csv", b"No.,Film\n1,62 um\n", "text/csv", "Data", "Readings ≥ 60 µm (in part)"),
    )
    dated = datetime(2026, 3, 31, 9, 30, tzinfo=UTC)
    page = filled("print").replace("</main>", SPANNING + "</main>")
    file.write_bytes(write_pdf(page, page_size="A4", author="A. Writer", attachments=attachments, dated=dated))
    return file


def _damaged(files: Iterable[Path]) -> list[str]:
    """Files whose syntax qpdf finds fault with."""
    wrong = []
    for file in files:
        try:
            done = subprocess.run(["qpdf", "--check", str(file)], capture_output=True, text=True, check=False)
        except FileNotFoundError:
            raise CannotJudgeError("There is no qpdf. Install it (Debian and Ubuntu: qpdf).") from None
        wrong += [f"{file}: {done.stdout} {done.stderr}"] if done.returncode else []
    return wrong


if __name__ == "__main__":
    sys.exit(main())
