"""What of the range was taken in stands in a file; what is different is noted, shown as a comparison shows it, and taken in on demand."""

from __future__ import annotations

import json
from hashlib import sha256
from pathlib import Path

import pytest

from specgen.checking import check
from specgen.commands import main
from specgen.findings import Finding, Severity
from specgen.source import bounded_json
from specgen.source.shared_range import LOCK
from tests.good_spec import ON
from tests.two_folders import RANGE, two_folders

USED = (
    "preparations.sand-steel",
    *(f"products.{id}" for id in ("barrier", "base", "clear", "primer")),
    "systems.cab",
    "systems.chassis",
)


@pytest.fixture
def folder(tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]) -> Path:
    """A folder whose range was taken in."""
    monkeypatch.chdir(tmp_path)
    made = two_folders(tmp_path)
    assert _run("range", "yard", "--accept", capsys=capsys) == (
        0,
        f"{len(USED)} records of ../range used, none taken in yet.\n\nyard/range.lock written, {len(USED)} records taken in.\n",
        "",
    )
    return made


def _run(*argv: str, capsys: pytest.CaptureFixture[str]) -> tuple[int, str, str]:
    code = main([*argv, *(("--on", ON.isoformat()) if argv[0] in ("check", "range") else ())])
    said = capsys.readouterr()
    return code, said.out, said.err


def _notes(folder: Path) -> list[Finding]:
    return [f for f in check(folder, ON).report if f.id.startswith("RNG")]


def _edit(place: Path, old: str, new: str, file: str = "range/records.yaml") -> None:
    text = (place / file).read_text("utf-8")
    assert old in text
    (place / file).write_text(text.replace(old, new, 1), "utf-8")


def test_without_the_file_one_note_says_how_to_make_it(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    made = two_folders(tmp_path)
    (note,) = _notes(made)
    assert (note.id, note.severity, note.path, note.place.file) == (
        "RNG005",
        Severity.NOTE,
        "project.range",
        "project.yaml",
    )
    assert "--accept" in note.remedy
    code, out, _ = _run("range", str(made), capsys=capsys)
    assert (code, out) == (0, f"{len(USED)} records of ../range used, none taken in yet; --accept takes them in.\n")
    assert not (made / LOCK).exists()


def test_one_record_a_line_in_order(folder: Path) -> None:
    lines = (folder / LOCK).read_text("utf-8").splitlines()
    assert [json.loads("{" + line.rstrip(",") + "}").popitem()[0] for line in lines[1:-2]] == sorted(USED)
    assert json.loads((folder / LOCK).read_text("utf-8"))["products.base"]["record"]["id"] == "base"
    assert _notes(folder) == []


def test_the_same_written_otherwise_is_no_difference(
    folder: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    _edit(tmp_path, "products:\n", "# another remark\nproducts:\n")
    assert _notes(folder) == []
    assert _run("range", "yard", capsys=capsys)[1] == "What is used of ../range is as it was taken in.\n"


def test_what_is_different_is_noted_shown_and_taken_in(
    folder: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    before = (folder / LOCK).read_bytes()
    _edit(tmp_path, "name: Example primer", "name: Other primer")
    _edit(tmp_path, "coat_within: 4 h", "coat_within: 6 h")
    assert [(f.id, f.path, f.place.file) for f in _notes(folder)] == [
        ("RNG004", "products.primer", "../range/records.yaml"),
        ("RNG004", "preparations.sand-steel", "../range/records.yaml"),
    ]
    code, out, _ = _run("range", "yard", capsys=capsys)
    assert code == 0
    assert out.startswith("range.lock -> ../range: 1 relaxed")
    assert "4 h to 6 h" in out
    assert "old yard/range.lock:2:1\n    new range/records.yaml:" in out
    assert (folder / LOCK).read_bytes() == before
    assert "1 record taken in" in _run("range", "yard", "--accept", "primer", capsys=capsys)[1]
    assert [f.path for f in _notes(folder)] == ["preparations.sand-steel"]
    assert "1 record taken in" in _run("range", "yard", "--accept", capsys=capsys)[1]
    assert _notes(folder) == []


def test_what_is_new_gone_and_no_longer_used_is_told(
    folder: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    _edit(tmp_path, "  system: cab\n", "  system: chassis\n", "yard/records.yaml")
    _edit(tmp_path, "- id: chassis\n", "- id: frame\n")
    _edit(tmp_path, "system: chassis\n", "system: frame\n", "yard/records.yaml")
    _edit(tmp_path, "system: chassis\n", "system: frame\n", "yard/records.yaml")
    told = {f.what for f in _notes(folder)}
    assert "frame of the range is used and was not taken in yet" in told
    assert "systems.chassis was taken in, and is no longer in the range" in told
    assert "systems.cab of the range was taken in, and nothing here uses it any more" in told
    out = _run("range", "yard", capsys=capsys)[1]
    assert "Used and not taken in yet: systems.frame.\n" in out
    assert "Taken in and no longer in the range: systems.chassis.\n" in out
    _run("range", "yard", "--accept", capsys=capsys)
    assert _notes(folder) == []
    assert "systems.cab" not in json.loads((folder / LOCK).read_text("utf-8"))


def _with(address: str, record: dict[str, object]) -> str:
    """A file whose digest is right, of a record that no source can hold."""
    text = json.dumps(record, sort_keys=True, separators=(",", ":"), ensure_ascii=False)
    held = {"sha256": sha256(text.encode()).hexdigest(), "record": record}
    return json.dumps({address: held, "schema_version": "2"})


def _deep(steps: int) -> object:
    return [_deep(steps - 1)] if steps else "text"


DAMAGED = {
    "no JSON": (lambda text: text[:-3], "is not whole JSON"),
    "a list": (lambda text: "[]", "does not hold an object"),
    "two merged": (lambda text: text.replace('"products.base"', '<<<<<<< ours\n"products.base"'), "is not whole JSON"),
    "another digest": (
        lambda text: text.replace('"sha256":"', '"sha256":"0'),
        "was altered at preparations.sand-steel",
    ),
    "another content": (
        lambda text: text.replace("coat_within", "coat_before"),
        "was altered at preparations.sand-steel",
    ),
    "another version": (
        lambda text: text.replace('"schema_version": "2"', '"schema_version": "9"'),
        "is not of version 2",
    ),
    "a number": (
        lambda text: _with("products.a", {"id": "a", "film": 3}),
        "something else than records at 'products.a'",
    ),
    "deep": (lambda text: _with("products.a", {"id": "a", "film": _deep(200)}), "something else than records"),
    "no id": (
        lambda text: _with("products.\x1b[31m", {"id": "\x1b[31m"}),
        r"something else than records at 'products.\x1b",
    ),
    "no record": (lambda text: text.replace('"products.base"', '"products.bose"'), "something else than records"),
}


@pytest.mark.parametrize("name", DAMAGED)
def test_a_damaged_file_is_a_warning_and_is_written_anew(
    folder: Path, capsys: pytest.CaptureFixture[str], name: str
) -> None:
    spoil, what = DAMAGED[name]
    whole = (folder / LOCK).read_text("utf-8")
    (folder / LOCK).write_text(spoil(whole), "utf-8")
    (found,) = _notes(folder)
    assert (found.id, found.severity, found.path) == ("RNG006", Severity.WARNING, "project.range")
    assert what in found.what
    code, out, err = _run("range", "yard", capsys=capsys)
    assert (code, out) == (2, "")
    assert what in err
    assert _run("range", "yard", "--accept", capsys=capsys)[0] == 0
    assert (folder / LOCK).read_text("utf-8") == whole


def test_a_link_or_a_huge_file_is_not_read(
    folder: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(bounded_json, "VALUES_LIMIT", 10)
    assert "holds more than 10 values" in _notes(folder)[0].what
    code, _, err = _run("range", "yard", "--accept", capsys=capsys)
    assert (code, "divide the folder" in err) == (2, True)
    monkeypatch.undo()
    (folder / LOCK).rename(tmp_path / "elsewhere")
    (folder / LOCK).symlink_to(tmp_path / "elsewhere")
    assert [f.id for f in _notes(folder)] == ["RNG006"]
    monkeypatch.chdir(tmp_path)
    code, _, err = _run("range", "yard", "--accept", capsys=capsys)
    assert (code, "is a link or no ordinary file" in err) == (2, True)


def test_nothing_is_taken_in_that_has_faults(folder: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    before = (folder / LOCK).read_bytes()
    _edit(tmp_path, "name: Example primer", "nome: Example primer")
    code, _, err = _run("range", "yard", "--accept", capsys=capsys)
    assert (code, "products.primer has faults" in err) == (2, True)
    assert (folder / LOCK).read_bytes() == before


def test_refusals(folder: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    _edit(tmp_path, "name: Example primer", "name: Other primer")
    for arguments, said in (
        (("yard", "--accept", "primr"), "primr is not among what is different; nearest: primer"),
        (("range",), "the project names no range; write `range: ../range` into it"),
        (("",), "the path is empty"),
    ):
        code, out, err = _run("range", *arguments, capsys=capsys)
        assert (code, out, said in err) == (2, "", True)
    _edit(tmp_path, RANGE, "range: ../none", "yard/project.yaml")
    code, _, err = _run("range", "yard", capsys=capsys)
    assert (code, "`specgen check` says what is wrong" in err) == (2, True)


def test_a_safety_set_of_the_range_is_part_of_the_products_that_name_it(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    eyes = {"id": "more-eyes", "route": "eyes", "action": "Rinse for a quarter of an hour."}
    made = two_folders(
        tmp_path,
        of_range={
            "safety_sets": [{"id": "basic", "first_aid": [eyes]}],
            "products.primer.hazards.safety_sets": ["basic"],
        },
    )
    assert [f.id for f in check(made, ON).report if f.severity is Severity.ERROR] == []
    assert _run("range", str(made), "--accept", capsys=capsys)[0] == 0
    held = json.loads((made / LOCK).read_text("utf-8"))
    assert eyes in held["products.primer"]["record"]["hazards"]["first_aid"]
    _edit(tmp_path, "a quarter of an hour", "ten minutes")
    assert [f.path for f in _notes(made)] == ["products.primer"]
