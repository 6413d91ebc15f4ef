"""The as-built record of a job as an issued document: when it is refused, what it holds, what moves afterwards, and whom it names."""

from __future__ import annotations

import json
import zipfile
from collections.abc import Callable
from datetime import date, timedelta
from io import BytesIO
from pathlib import Path
from shutil import copytree

import pytest
from pypdf import PdfReader

from specgen.commands import main
from specgen.issuing.candidate import candidate
from specgen.issuing.issue import print_with_typesetter
from specgen.issuing.refused import Refused
from specgen.model.declaring import Audience
from specgen.register.chain import all_faults
from specgen.register.export import export
from specgen.register.failure import RegisterError
from specgen.register.folder import history_of
from specgen.register.notes import withdraw
from tests.good_spec import GOOD, ON
from tests.page_text import running_text
from tests.register.conftest import Desk, later

RECORD = "AB-MS-001"
READ = Path(__file__).parent / "released_readings"
PEOPLE = "people:\n  - {id: ka, name: K. Aldermoor}\n  - {id: tb, name: T. Brisk}\n"


@pytest.fixture(scope="module")
def finished(tmp_path_factory: pytest.TempPathFactory) -> Desk:
    """A job that was issued, and the readings that release it; nobody goes on with it."""
    desk = Desk(copytree(GOOD, tmp_path_factory.mktemp("finished") / "specs"))
    copytree(READ, desk.folder / "readings")
    (desk.folder / "people.yaml").write_text(PEOPLE)
    desk.revise("MS-001")
    return desk


@pytest.fixture
def built(finished: Desk, tmp_path: Path) -> Desk:
    """The same in a folder of one's own."""
    desk = Desk(copytree(finished.folder, tmp_path / "specs"))
    desk.minutes = finished.minutes
    return desk


def _film(desk: Desk, old: str, new: str) -> None:
    desk.change(old, new, "readings/refit-film.csv")


def test_the_record_holds_the_readings_and_the_revision_worked_to(built: Desk) -> None:
    record = built.revise(RECORD, reason="work finished").kept.record
    assert (record.about, record.subject, record.revision, record.next_review) == ("records", "refit", "A", "")
    assert [(one.document, one.revision) for one in record.references] == [("MS-001", "A")]
    kept = {name for name in record.files if name.startswith("readings/")}
    assert kept == {"readings/refit-film.csv", "readings/refit-record.csv"}
    place = built.register / RECORD / "0001"
    assert all((place / name).read_bytes() == (built.folder / name).read_bytes() for name in kept)
    assert list(all_faults(history_of(built.register, RECORD))) == []
    (place / "readings" / "refit-film.csv").write_text("altered")
    assert any("refit-film.csv was altered" in fault for fault in all_faults(history_of(built.register, RECORD)))


def _no_release(desk: Desk) -> None:
    record = desk.folder / "readings" / "refit-record.csv"
    record.write_text(record.read_text("utf-8").partition(",,,,,,,,release")[0])


def _no_people(desk: Desk) -> None:
    (desk.folder / "people.yaml").unlink()


def _a_name(desk: Desk) -> None:
    _film(desk, "59,um,magnetic gauge,K-1,2026-11-10,0,0,2026-11-10 12:00,ka", "59,um,magnetic gauge,K-1,2026-11-10,0,0,2026-11-10 12:00,K. Aldermoor")  # fmt: skip


def _nothing_read(desk: Desk) -> None:
    for file in (desk.folder / "readings").iterdir():
        file.unlink()


@pytest.mark.parametrize(
    ("spoil", "told"),
    [
        (_no_release, "DOOR: nobody has released it"),
        (lambda desk: _film(desk, ",55,um", ",35,um"), "Film of the primer: not conforming"),
        (_no_people, "the folder has no people.yaml"),
        (_a_name, "the records name K. Aldermoor; write the id, ka, so that the name can be erased later"),
        (_nothing_read, "the folder readings holds no file that is called by refit"),
        (
            lambda desk: desk.change("max: 80 um, text", "max: 78 um, text"),
            "the sources say something else than MS-001 A, which is in force",
        ),
        (
            lambda desk: withdraw(
                desk.register, "MS-001", "A", reason="wrong can", by="Ada Quill", now=later(1) + timedelta(days=1)
            ),
            "MS-001 has no revision in force",
        ),
    ],
)
def test_what_is_not_released_or_rests_on_nothing_is_not_approved(
    built: Desk, spoil: Callable[[Desk], object], told: str
) -> None:
    spoil(built)
    with pytest.raises(Refused) as refused:
        built.approve(RECORD)
    assert any(told in line for line in refused.value.lines)
    assert not (built.register / RECORD).exists()


def test_a_reading_changed_after_the_approval_voids_it(built: Desk) -> None:
    built.approve(RECORD)
    _film(built, ",55,um", ",54,um")
    with pytest.raises(Refused) as refused:
        built.issue(RECORD)
    assert any("approve-ada-quill.json is void" in line for line in refused.value.lines)


def test_how_headings_are_read_is_kept_and_approved_with_the_readings(built: Desk) -> None:
    headings = built.folder / "readings" / "columns.txt"
    headings.write_text("remark=Note\n")
    built.approve(RECORD)
    headings.write_text("remark=Remarks\n")
    with pytest.raises(Refused) as refused:
        built.issue(RECORD)
    assert any("is void" in line for line in refused.value.lines)
    assert "readings/columns.txt" in built.revise(RECORD).kept.record.files


GRANTED = (
    "concessions:\n  - {id: c-1, job: refit, items: [DOOR], point: primer-film, film_min: {specified: 40 um, conceded: 36 um}, "
    "agreed_by: ka, agreed_on: 2026-11-10, until: 2026-12-31, reason: REASON, record: NCR-1}\n"
)


def test_a_warning_on_the_job_holds_up_no_record(built: Desk) -> None:
    """The work is done to a revision that was clean, and a waiver of it ends with the work."""
    built.change("    service_after: 7 days\n  - id: chassis\n", "  - id: chassis\n")
    waiver = "{id: w, rule: REL002, path: systems.cab.service_after, reason: no service yet, by: Ada Quill, until: 2026-12-31}"
    built.change("    workplace: booth\n", f"    workplace: booth\n    waivers: [{waiver}]\n")
    built.revise("MS-001", reason="not in service yet")
    after = date(2027, 2, 1)
    with pytest.raises(Refused) as refused:
        candidate(built.folder, built.register, "MS-001", after)
    assert any(": warning REL002" in line for line in refused.value.lines)
    assert candidate(built.folder, built.register, RECORD, after).recorded is not None


def test_a_warning_on_a_concession_holds_its_record_up(built: Desk) -> None:
    said = '{specified: "no runs, pores or bare places", conceded: runs; the last coat may be sprayed without the respirator}'
    on_words = GRANTED.replace("REASON", "Agreed.").replace("primer-film, film_min: {specified: 40 um, conceded: 36 um}", f"look, words: {said}")  # fmt: skip
    (built.folder / "conceded.yaml").write_text(on_words)
    with pytest.raises(Refused) as refused:
        built.approve(RECORD)
    assert [line.partition(": ")[2].split()[:2] for line in refused.value.lines] == [["warning", "REC009"]]
    assert candidate(built.folder, built.register, "MS-001", ON).recorded is None


def test_who_holds_the_job_holds_what_was_built(built: Desk) -> None:
    with (built.folder / "project.yaml").open("a") as out:
        out.write(
            "  distribution:\n    - {id: shop, name: Body shop, documents: [MS-001]}\n"
            "    - {id: lab, name: Laboratory, documents: [DS-primer]}\n"
        )
    assert built.revise(RECORD).kept.record.holders == ("Body shop",)


def test_a_reading_changed_while_it_is_issued_stops_it(built: Desk) -> None:
    built.approve(RECORD)

    def step(name: str) -> None:
        if name == "print":
            (built.folder / "readings" / "refit-more.csv").write_text("point,item,value,on,by\n")

    with pytest.raises(RegisterError, match="changed while they were being issued"):
        built.issue(RECORD, step=step)
    assert not (built.register / RECORD).exists()


def test_what_moved_since_is_told_and_a_later_revision_of_the_job_is_not(
    built: Desk, capsys: pytest.CaptureFixture[str]
) -> None:
    built.revise(RECORD)
    built.change("after repair.", "after any repair.")
    built.revise("MS-001", reason="words")

    def told() -> list[str]:
        capsys.readouterr()
        main(["register", "overdue", "--path", str(built.folder), "--on", "2026-11-26"])
        return [line for line in capsys.readouterr().out.splitlines() if line.startswith(RECORD)]

    assert told() == []
    _film(built, ",55,um", ",54,um")
    (built.folder / "readings" / "refit-more.csv").write_text("point,item,value,on,by\n")
    (built.folder / "readings" / "refit-record.csv").unlink()
    assert told() == [
        f"{RECORD} A: readings/refit-film.csv was changed since; asks for a revision",
        f"{RECORD} A: readings/refit-more.csv was added since; asks for a revision",
        f"{RECORD} A: readings/refit-record.csv, of which it was made, is not kept in the folder any more; asks for a revision",
    ]


def test_a_revision_worked_to_that_is_withdrawn_makes_its_record_suspect(
    built: Desk, capsys: pytest.CaptureFixture[str]
) -> None:
    built.revise(RECORD)
    withdraw(built.register, "MS-001", "A", reason="wrong can", by="Ada Quill", now=later(90))
    main(["register", "overdue", "--path", str(built.folder), "--on", "2026-11-26"])
    assert f"{RECORD} A: it rests on MS-001 A: it was withdrawn on 2026-11-25: wrong can" in capsys.readouterr().out


def test_a_recall_finds_the_issued_record_when_the_folder_keeps_its_readings_no_more(
    built: Desk, capsys: pytest.CaptureFixture[str]
) -> None:
    built.revise(RECORD)
    _nothing_read(built)
    assert main(["where-used", "batch:b-103", "--path", str(built.folder)]) == 0
    lines = capsys.readouterr().out.splitlines()
    assert f"register: {RECORD} A  in force  T-01, T-02  DOOR" in lines
    assert not any(line.startswith("No record names") for line in lines)
    assert main(["where-used", "batch:B-999", "--path", str(built.folder)]) == 0
    assert capsys.readouterr().out.startswith("No record names the batch B-999")


def test_a_recall_tells_an_issued_record_that_was_altered(built: Desk, capsys: pytest.CaptureFixture[str]) -> None:
    place = built.revise(RECORD).kept.folder
    (place / "model.maker.json").write_text("{}")
    assert main(["where-used", "batch:B-103", "--path", str(built.folder)]) == 0
    told = capsys.readouterr().out.splitlines()
    assert any(line.startswith("Not known: model.maker.json of AB-MS-001 A was altered") for line in told)


def test_the_pages_name_nobody_and_what_the_customer_gets_holds_the_readings(built: Desk) -> None:
    built.approve(RECORD)
    kept = built.issue(RECORD, printer=print_with_typesetter).kept
    folder = kept.folder / "documents"
    page = running_text((folder / f"{RECORD}-as-built-record.html").read_text("utf-8"))
    pages = "".join(one.extract_text() for one in PdfReader(folder / f"{RECORD}-as-built-record.pdf").pages)
    for text in (page, pages):
        assert "Aldermoor" not in text
        assert "RELEASED" in text
        assert "NOT RELEASED" not in text
        assert "Persons are named by their ids: tb, ka" in " ".join(text.split()) or "ka, tb" in " ".join(text.split())
        assert "Work began on 2026-11-10, before revision A" in " ".join(text.split())
        assert "DRAFT" not in text
    with zipfile.ZipFile(BytesIO(export(kept, Audience.CUSTOMER, "Example Coatings"))) as whole:
        names = {name.partition("/")[2] for name in whole.namelist()}
    assert {"readings/refit-film.csv", "readings/refit-record.csv"} < names
    assert not any(name.startswith(("sources/", "approvals/")) or "maker" in name for name in names)


def test_a_concession_is_part_of_the_record_and_of_no_other_document(built: Desk) -> None:
    (built.folder / "conceded.yaml").write_text(GRANTED.replace("REASON", "Covered by two full coats."))
    _film(built, ",55,um", ",37,um")
    found = candidate(built.folder, built.register, RECORD, ON)
    assert set(found.spec.concessions) == {"c-1"}
    assert set(candidate(built.folder, built.register, "MS-001", ON).spec.concessions) == set()
    record = built.revise(RECORD).kept.record
    assert "concessions.c-1" in record.contents
    assert "sources/conceded.yaml.txt" in record.files


def test_two_documents_of_one_number_do_not_share_a_chain(built: Desk) -> None:
    built.revise(RECORD)
    job = built.folder / "job.yaml"
    job.write_text(job.read_text("utf-8").replace("number: MS-001", f"number: {RECORD}"))
    with pytest.raises(RegisterError, match="another document under the number"):
        built.approve(RECORD)


def test_an_as_built_record_is_no_side_of_a_comparison(built: Desk, capsys: pytest.CaptureFixture[str]) -> None:
    built.approve(RECORD)
    kept = built.issue(RECORD, printer=print_with_typesetter).kept
    pdf = kept.folder / "documents" / f"{RECORD}-as-built-record.pdf"
    for side in (f"register:{built.register}:{RECORD}@A", str(pdf)):
        assert main(["compare", side, str(built.folder)]) == 2
        assert "compare the revisions of the job" in capsys.readouterr().err


def test_a_day_without_the_release_is_not_the_day_of_a_record(built: Desk) -> None:
    """As at a day before its readings nothing was released."""
    with pytest.raises(Refused):
        candidate(built.folder, built.register, RECORD, date(2026, 11, 9))
    assert json.loads(json.dumps(candidate(built.folder, built.register, RECORD, ON).recorded is not None))
