"""A folder of sources to issue from, and issuing without the typesetter where the bytes of a PDF do not matter."""

from __future__ import annotations

import io
import shutil
from collections.abc import Mapping
from datetime import UTC, datetime, timedelta
from pathlib import Path
from typing import Any

import pytest
from pypdf import PdfWriter

from specgen.issuing.approve import approve
from specgen.issuing.candidate import Candidate
from specgen.issuing.issue import Issued, issue
from specgen.printing.files import Issue
from tests.good_spec import GOOD, ON

BEGIN = datetime(2026, 11, 25, 9, 0, tzinfo=UTC)


def later(minutes: int) -> datetime:
    return BEGIN + timedelta(minutes=minutes)


def small_pdf(found: Candidate, issue: Issue) -> Mapping[str, bytes]:
    """A page and the attachments, by the public library alone; the text names the revision."""
    writer = PdfWriter()
    writer.add_blank_page(200, 200)
    writer.add_metadata({"/Title": f"{found.document} {issue.view.revision}"})
    for one in issue.attachments:
        writer.add_attachment(one.name, one.data)
    out = io.BytesIO()
    writer.write(out)
    return {f"{found.document}-method-statement.pdf": out.getvalue()}


def no_versions() -> Mapping[str, str]:
    return {"specgen": "0"}


class Desk:
    """The folder of a project and what is done with it; time goes on by a minute each step."""

    def __init__(self, folder: Path) -> None:
        self.folder, self.register, self.minutes = folder, folder / "register", 0

    def now(self) -> datetime:
        self.minutes += 1
        return later(self.minutes)

    def approve(self, document: str = "MS-001", **changed: Any) -> Any:
        said = {
            "role": "approve",
            "name": "Ada Quill",
            "meaning": "May be used.",
            "on": ON,
            "now": self.now(),
        } | changed
        return approve(self.folder, self.register, document, **said)

    def issue(self, document: str = "MS-001", **changed: Any) -> Issued:
        said = {
            "reason": "first issue",
            "on": ON,
            "now": self.now(),
            "printer": small_pdf,
            "versions": no_versions,
        } | changed
        return issue(self.folder, self.register, document, **said)

    def revise(self, document: str = "MS-001", **changed: Any) -> Issued:
        self.approve(document)
        return self.issue(document, **changed)

    def change(self, old: str, new: str, file: str = "job.yaml") -> None:
        path = self.folder / file
        text = path.read_text("utf-8")
        assert text.count(old) == 1
        path.write_text(text.replace(old, new), "utf-8")


@pytest.fixture
def desk(tmp_path: Path) -> Desk:
    shutil.copytree(GOOD, tmp_path / "specs")
    return Desk(tmp_path / "specs")
