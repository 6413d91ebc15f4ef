"""The revision history on the pages of a document: what was issued, when, why and on whose word, and the one that is printed."""

from __future__ import annotations

import re
from collections.abc import Mapping
from functools import partial

from specgen.checking import check
from specgen.documents.parts.job_revision import is_current, revision_said
from specgen.documents.parts.revision_table import revision_table
from specgen.facts.closure import cut_to_closure
from specgen.issuing.candidate import Candidate
from specgen.printing.documents import print_documents
from specgen.printing.files import Issue, context_of
from specgen.register.folder import history_of
from specgen.register.notes import withdraw
from specgen.register.revisions import Revision, Revisions, revisions, revisions_of
from tests.good_spec import ON
from tests.page_text import running_text
from tests.register.conftest import Desk, small_pdf

ADA = (("approve", "Ada Quill"),)


def _draft(desk: Desk, kind: str, number: str) -> str:
    printed = print_documents(check(desk.folder, ON), documents=[kind], formats=["html"], register=desk.register)
    return running_text(printed[f"{number}-{kind}.html"].decode())


def _rows(page: str) -> list[list[str]]:
    table = page[page.index("<caption>Revision history</caption>") :]
    rows = re.findall(r"<tr role=\"row\">(.*?)</tr>", table[: table.index("</table>")], re.DOTALL)
    return [re.findall(r"<span>(.*?)</span>", row, re.DOTALL) for row in rows[1:]]


def test_a_draft_lists_what_was_issued_and_then_itself(desk: Desk) -> None:
    assert "Revision history" not in _draft(desk, "method-statement", "MS-001")
    desk.revise(reason="first issue of the doors")
    assert _rows(_draft(desk, "method-statement", "MS-001"))[1][2] == "Says what revision A says."
    desk.change("{number: MS-001, ", "{number: MS-001, reason_for_change: Thicker primer., ")
    assert _rows(_draft(desk, "method-statement", "MS-001")) == [
        ["A", "2026-11-25", "first issue of the doors", "approved: Ada Quill"],
        [
            "draft",
            "not issued",
            "Thicker primer. Changes since A: see the change notice.",
            "not approved",
        ],
    ]
    # the sheet of a product has a history of its own
    assert "Revision history" not in _draft(desk, "data-sheet", "DS-primer")


def test_a_statement_names_the_revision_of_each_data_sheet_it_rests_on(desk: Desk) -> None:
    def sheets() -> str:
        found = re.search(r"It rests on the data sheets (.*?)\.<", _draft(desk, "method-statement", "MS-001"))
        assert found is not None
        return found[1]

    assert "DS-primer, not issued" in sheets()
    desk.revise("DS-primer", reason="first issue of the primer")
    assert "DS-primer revision A of 2026-11-25;" in sheets()
    desk.change("per_pass: 15 um", "per_pass: 16 um", "products.yaml")
    assert "DS-primer revision A of 2026-11-25, changed since;" in sheets()


def test_what_is_issued_lists_those_before_it_and_ends_with_itself(desk: Desk) -> None:
    held: list[list[tuple[str, ...]]] = []

    def printer(found: Candidate, issue: Issue) -> Mapping[str, bytes]:
        known = {found.document: revisions(found.history)}
        context = context_of(found.spec, ON, issue=issue, revisions=known)
        held.append(list(revision_table(found.document, found.subject.document, context).rows))
        return small_pdf(found, issue)

    desk.approve(role="check", name="Bo Reed", meaning="Checked.")
    desk.revise(reason="first", printer=printer)
    desk.revise(reason="second", printer=printer)
    first = ("A", "2026-11-25", "first", "approved: Ada Quill\nchecked: Bo Reed")
    assert held == [[first], [first, ("B", "2026-11-25", "second", "approved: Ada Quill")]]


def test_a_withdrawn_revision_says_so(desk: Desk) -> None:
    desk.revise(reason="first")
    withdraw(desk.register, "MS-001", "A", reason="film too thin", by="Ada Quill", now=desk.now())
    assert revisions_of(desk.register, "MS-001") == Revisions(
        (Revision("A", "2026-11-25", "first", ADA, ("2026-11-25", "film too thin")),)
    )
    assert _rows(_draft(desk, "method-statement", "MS-001"))[0][2] == "first\nWithdrawn 2026-11-25: film too thin"


def test_of_a_chain_that_does_not_hold_nothing_is_listed(desk: Desk) -> None:
    kept = desk.revise(reason="first").kept
    text = (kept.folder / "certificate.json").read_text("utf-8")
    (kept.folder / "certificate.json").write_text(text.replace("first", "third"), "utf-8")
    assert revisions_of(desk.register, "MS-001") == Revisions(whole=False)
    assert "is damaged; its earlier revisions are not listed" in _rows(_draft(desk, "method-statement", "MS-001"))[0][2]
    assert revisions_of(desk.register, "DS-primer") == Revisions()
    assert history_of(desk.register, "DS-primer").kept == ()


def test_what_is_drawn_up_anew_is_a_draft_until_the_job_it_is_drawn_from_is_issued(desk: Desk) -> None:
    def said() -> tuple[str, bool]:
        found = check(desk.folder, ON)
        assert found.loaded.spec is not None
        job = found.loaded.spec.jobs["refit"]
        now = partial(cut_to_closure, found.loaded.spec, job)
        known = {"MS-001": revisions_of(desk.register, "MS-001", now)}
        context = context_of(found.loaded.spec, ON, revisions=known)
        return revision_said("MS-001", context), is_current("MS-001", context)

    assert said() == ("DRAFT, not issued", False)
    desk.revise(reason="first")
    assert said() == ("A, issued 2026-11-25", True)
    desk.change("{number: MS-001, ", "{number: MS-001, reason_for_change: Thicker primer., ")
    assert said() == ("DRAFT, after revision A of 2026-11-25", False)
    withdraw(desk.register, "MS-001", "A", reason="film too thin", by="Ada Quill", now=desk.now())
    desk.change("reason_for_change: Thicker primer., ", "")
    assert said() == ("DRAFT, after revision A of 2026-11-25", False)
    (desk.register / "MS-001" / "0001" / "certificate.json").write_text("{}", "utf-8")
    assert said() == ("DRAFT; the register of the job is damaged", False)
