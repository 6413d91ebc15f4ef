"""An approval is bound to the tables its document looked into: to each of them, to no other, and however the process came to it."""

from __future__ import annotations

import inspect
import shutil
import subprocess
import sys
from collections.abc import Callable, Iterator
from dataclasses import replace
from pathlib import Path

import pytest

import specgen
from specgen.checking import check, check_loaded
from specgen.commands import main
from specgen.comparison import reference_snapshot
from specgen.documents.registry import KINDS
from specgen.facts.closure import loaded_closure
from specgen.issuing.candidate import candidate
from specgen.issuing.refused import Refused
from specgen.issuing.tables_read import tables_read
from specgen.model.job import Job
from specgen.model.parse import load
from specgen.model.product import Product
from specgen.printing.files import context_of
from specgen.standards.reads import recorded
from specgen.standards.tables import table, table_names
from tests.good_spec import DEMO, DEMO_RANGE, GOOD, ON
from tests.register.conftest import Desk

PACKAGE = Path(specgen.__file__).parent

Change = Callable[[str], None]


@pytest.fixture
def change_a_cell(monkeypatch: pytest.MonkeyPatch) -> Iterator[Change]:
    """Puts a word into the last cell of the last row of a table, as long as the test runs."""
    # a process keeps the hash of a table, which no other program changes under it
    monkeypatch.setattr(reference_snapshot, "_hashed", inspect.unwrap(reference_snapshot._hashed))
    before = {}

    def change(name: str) -> None:
        held = table(name)
        before[name] = held._content
        last = held.columns[-1]
        rows = (*held.rows[:-1], {**held.rows[-1], last: f"{held.rows[-1][last]} altered"})
        object.__setattr__(held, "_content", replace(held._content, rows=rows))

    yield change
    for name, content in before.items():
        object.__setattr__(table(name), "_content", content)


def _read(folder: Path, document: str) -> frozenset[str]:
    found = candidate(folder, folder / "register", document, ON)
    return frozenset(name.removeprefix("content of ") for name in found.frozen.snapshot)


def _subjects(folder: Path) -> list[tuple[Path, str, str]]:
    loaded = load(folder)
    assert loaded.spec is not None
    every = [(folder, kind, key) for kind in ("jobs", "products") for key in getattr(loaded.spec, kind)]
    return [one for one in every if not loaded.of_range(*one[1:])]


@pytest.mark.parametrize(
    ("folder", "kind", "key"), [*_subjects(GOOD), *_subjects(DEMO)[::5], *_subjects(DEMO_RANGE)[::5]]
)
def test_what_is_read_does_not_hang_on_what_was_asked_before(folder: Path, kind: str, key: str) -> None:
    def part() -> tuple[Job | Product, frozenset[str]]:
        loaded = load(folder)
        assert loaded.spec is not None
        subject = getattr(loaded.spec, kind)[key]
        cut = loaded_closure(loaded, loaded.spec, subject)
        first = tables_read(cut, subject, ON)
        # everything that is kept for this very part is asked again
        assert tables_read(cut, subject, ON) == first
        return subject, first

    subject, first = part()
    check(folder, ON)
    assert part()[1] == first
    assert 10 < len(first) < len(table_names())
    # what the pages themselves ask is among it
    loaded = load(folder)
    assert loaded.spec is not None
    cut = loaded_closure(loaded, loaded.spec, subject)
    checked = check_loaded(cut, ON)
    assert cut.spec is not None
    about = "job" if isinstance(subject, Job) else "product"
    with recorded() as worded:
        for kind in KINDS.values():
            if kind.issued and kind.about == about:
                kind.view(subject, context_of(cut.spec, checked.on))
    assert set() < worded <= first


def test_a_changed_cell_in_a_table_that_was_read_voids(desk: Desk, change_a_cell: Change) -> None:
    assert "table overcoat_needs" in _read(desk.folder, "MS-001")
    desk.approve()
    change_a_cell("overcoat_needs")
    with pytest.raises(Refused, match="is void: the content was changed after it was given"):
        desk.issue()


def test_a_changed_cell_in_any_other_table_voids_nothing(desk: Desk, change_a_cell: Change) -> None:
    read = _read(desk.folder, "MS-001")
    desk.approve()
    others = [name for name in table_names() if f"table {name}" not in read]
    assert len(others) > 20
    for name in others:
        change_a_cell(name)
    assert desk.issue().kept.record.revision == "A"


def test_other_records_of_the_folder_void_nothing(desk: Desk) -> None:
    desk.approve("DS-primer")
    digest = candidate(desk.folder, desk.register, "DS-primer", ON).digest
    # the sheet of the primer does not rest on the job that uses it
    desk.change("after repair.", "after any repair.")
    assert candidate(desk.folder, desk.register, "DS-primer", ON).digest == digest
    assert desk.issue("DS-primer").kept.record.revision == "A"


_DIGEST = """
import sys
from datetime import date
from pathlib import Path
import specgen
from specgen.issuing.candidate import candidate
folder = Path(sys.argv[1])
assert Path(specgen.__file__).parent.parent == Path.cwd()
print(candidate(folder, folder / "register", sys.argv[2], date.fromisoformat(sys.argv[3])).digest)
"""


def _elsewhere(package: Path, folder: Path) -> str:
    """The digest as a process of its own finds it, with the program in a folder."""
    told = subprocess.run(
        [sys.executable, "-c", _DIGEST, str(folder), "MS-001", ON.isoformat()],
        cwd=package.parent,
        env={"PYTHONPATH": str(package.parent)},
        capture_output=True,
        text=True,
        check=False,
    )
    assert told.returncode == 0, told.stderr
    return told.stdout.strip()


def _copied(place: Path) -> Path:
    shutil.copytree(PACKAGE, place / "specgen", ignore=shutil.ignore_patterns("__pycache__"))
    (place / "templates").symlink_to(PACKAGE.parent / "templates")
    return place / "specgen"


def test_another_process_agrees_whatever_comments_say(desk: Desk, tmp_path: Path) -> None:
    read = _read(desk.folder, "MS-001")
    desk.approve()
    digest = candidate(desk.folder, desk.register, "MS-001", ON).digest
    copy = _copied(tmp_path / "copy")
    for file in (copy / "standards" / "tables").glob("*.yaml"):
        unread = f"table {file.stem}" not in read
        text = file.read_text("utf-8")
        file.write_text("# a remark\n" + (text.replace("title: ", "title: Another ", 1) if unread else text), "utf-8")
    assert _elsewhere(copy, desk.folder) == digest
    file = copy / "standards" / "tables" / "overcoat_needs.yaml"
    file.write_text(file.read_text("utf-8").replace("title: ", "title: Another ", 1), "utf-8")
    assert _elsewhere(copy, desk.folder) != digest


def test_a_record_tells_of_no_table_that_its_document_does_not_read(
    monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str], change_a_cell: Change
) -> None:
    monkeypatch.chdir(DEMO)

    def told(call: list[str]) -> str:
        main([*call, "--on", ON.isoformat()])
        return capsys.readouterr().out

    unread = sorted(
        set(table_names()) - {name.removeprefix("table ") for name in _read_of("MS-3134") | _read_of("MS-3107")}
    )
    assert unread
    before = told(["compare", "register:MS-3134@C", "."]), told(["register", "overdue"])
    for name in unread:
        change_a_cell(name)
    assert (told(["compare", "register:MS-3134@C", "."]), told(["register", "overdue"])) == before


def _read_of(document: str) -> frozenset[str]:
    loaded = load(DEMO)
    assert loaded.spec is not None
    job = next(job for job in loaded.spec.jobs.values() if job.document.number == document)
    return tables_read(loaded_closure(loaded, loaded.spec, job), job, ON)
