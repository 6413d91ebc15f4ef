"""Source format 1: read as what it says, rewritten without a loss, and told apart from format 2 wherever the two meet."""

from __future__ import annotations

import json
import shutil
from pathlib import Path
from typing import Any

import pytest
import yaml

import specgen.rendering.writing as writing
from specgen.checking import check
from specgen.commands import main
from specgen.findings import Severity
from specgen.model.canonical import canonical, model_of
from specgen.model.declaring import Audience
from specgen.model.format_1 import KEYS, VALUES, new_address, new_word, restored, upgraded
from specgen.model.parse import load, parse
from specgen.model.spec import KINDS, LIST_KINDS, Spec
from specgen.model.walk import declaration, inner_record
from specgen.source.project import Sources
from specgen.source.reader import read_text
from specgen.source.tree import Mapping
from tests.good_spec import DEMO, DEMO_RANGE, GOOD, ON

OLD = GOOD.parent / "format_1"
FOLDERS = [OLD / "good", OLD / "second_good"]
WORDS = [(f"{where}.{old}", new) for where, old, new in KEYS]
WORDS += [(f"{where}={old}", new) for where, words in VALUES for old, new in words.items()]


def _spec(folder: Path) -> Spec:
    spec = load(folder).spec
    assert spec is not None
    return spec


def _copy(folder: Path, to: Path) -> Path:
    shutil.copytree(folder, to)
    return to


def _comments(folder: Path) -> list[str]:
    return [
        line.partition("#")[2]
        for file in sorted(folder.glob("*.yaml"))
        for line in file.read_text("utf-8").splitlines()
    ]


def test_a_folder_of_format_1_is_read_as_what_it_says() -> None:
    folder = OLD / "good"
    assert check(folder, ON).report.findings == ()
    model = json.loads(canonical(_spec(folder)))
    first = {key: value for key, value in restored(model).items() if key != "schema_version"}
    whole: dict[str, Any] = {}
    for file in sorted(folder.glob("*.yaml")):
        whole.update(yaml.load(file.read_text("utf-8"), Loader=yaml.CBaseLoader))
    assert first == {
        "project": whole["project"],
        **{kind: {entry["id"]: entry for entry in whole[kind]} for kind in LIST_KINDS if kind in whole},
    }


@pytest.mark.parametrize("folder", FOLDERS, ids=lambda folder: folder.name)
def test_a_folder_of_format_1_says_what_its_twin_of_format_2_says(folder: Path) -> None:
    assert load(folder).findings == []
    assert canonical(_spec(folder)) == canonical(_spec(GOOD.parent / folder.name))


@pytest.mark.parametrize("folder", FOLDERS, ids=lambda folder: folder.name)
def test_an_upgrade_changes_words_and_nothing_else(
    folder: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    new = _copy(folder, tmp_path / "specs")
    assert main(["upgrade", str(new)]) == 0
    assert capsys.readouterr().out.splitlines()[-1] == "The folder is now in source format 2."
    assert canonical(_spec(new)) == canonical(_spec(folder))
    assert check(new, ON).report.findings == ()
    assert _comments(new)[-1:] == _comments(folder)[-1:]
    assert [text for text in _comments(new) if text] == [text for text in _comments(folder) if text]
    before = {file.name: file.read_bytes() for file in new.iterdir()}
    assert main(["upgrade", str(new)]) == 0
    assert capsys.readouterr().out == "The folder is in source format 2 already; nothing was rewritten.\n"
    assert {file.name: file.read_bytes() for file in new.iterdir()} == before


def _without_digests(value: Any) -> Any:
    """Names of pictures as their author writes them; reading adds the digest."""
    if isinstance(value, dict):
        return {key: _without_digests(one) for key, one in value.items()}
    if isinstance(value, list):
        return [_without_digests(one) for one in value]
    return value.partition(" sha256:")[0] if isinstance(value, str) else value


def test_demo_in_the_words_of_format_1_gives_equal_findings(tmp_path: Path) -> None:
    checked = check(DEMO, ON)
    assert checked.loaded.spec is not None
    first = restored(model_of(checked.loaded.spec))
    del first["schema_version"], first["project"]["range"]
    first |= {kind: list(first[kind].values()) for kind in LIST_KINDS if kind in first}
    first = _without_digests(first)
    (tmp_path / "project.yaml").write_text(
        yaml.dump(first, Dumper=yaml.CSafeDumper, sort_keys=False, allow_unicode=True, width=1000), "utf-8"
    )
    for folder in (DEMO, DEMO_RANGE):
        for beside in (*folder.rglob("*.svg"), *folder.glob("reports/*.csv")):
            place = tmp_path / beside.relative_to(folder)
            place.parent.mkdir(parents=True, exist_ok=True)
            shutil.copy(beside, place)
    again = check(tmp_path, ON)
    assert again.loaded.spec is not None
    # all stands in one folder now
    assert canonical(again.loaded.spec, content=True) == canonical(checked.loaded.spec, content=True)
    findings = [sorted((f.id, f.severity, f.path, f.what) for f in one.report.findings) for one in (again, checked)]
    assert findings[0] == findings[1]


def _at(where: str, value: Any) -> dict[str, Any]:
    """A value at its place, each step that may be any one called `one`."""
    for step in reversed(where.split(".")[1:]):
        value = [value] if step == "*" else {step: value}
    return {where.split(".")[0]: value}


@pytest.mark.parametrize(("old", "new"), WORDS, ids=[old for old, _ in WORDS])
def test_every_word_goes_there_and_back(old: str, new: str) -> None:
    where, _, value = old.partition("=")
    path = tuple(step if step != "*" else "one" for step in where.split("."))
    if value:
        assert new_word(path, value) == new
        source = _at(where, value)
    else:
        assert new_word(path) == new
        assert new_address(".".join(path)) == ".".join([*new_address(".".join(path[:-1])).split("."), new])
        source = _at(where, "x")
    read, faults = read_text(yaml.dump(source, Dumper=yaml.CSafeDumper).encode(), "one.yaml")
    assert faults == []
    assert isinstance(read.root, Mapping)
    renamed = upgraded(read.root)
    assert [(edit.old, edit.new) for edit in renamed.edits][-1:] == [(value or where.rpartition(".")[2], new)]
    again = upgraded(renamed.root)
    assert again.edits == []
    assert new in {edit.new for edit in again.newer}
    assert restored(_plain(renamed.root)) == source


def _plain(node: Any) -> Any:
    if isinstance(node, Mapping):
        return {key: _plain(value) for key, value in node.entries.items()}
    return [_plain(item) for item in node.items] if hasattr(node, "items") else node.text


def test_every_new_word_is_one_of_the_model_and_no_old_one_is() -> None:
    for old, new in WORDS:
        where, _, value = old.partition("=")
        kind, *steps = [step for step in new_address(where).split(".") if step != "*"]
        owner = KINDS[kind]
        for step in steps[:-1]:
            held = inner_record(owner, step)
            assert held is not None, old
            owner = held
        if not value:
            assert new in owner.model_fields, old
            assert where.rpartition(".")[2] not in owner.model_fields, old
        else:
            assert steps[-1] in owner.model_fields, old


def test_no_withheld_leaf_was_renamed() -> None:
    """The hash of a withheld leaf is under its address: another address would be another hash."""
    for old, _ in WORDS:
        where = [step for step in new_address(old.partition("=")[0]).split(".") if step != "*"]
        owner = KINDS[where[0]]
        for step in where[1:-1]:
            held = inner_record(owner, step)
            assert held is not None, old
            owner = held
        said = declaration(owner, where[-1])
        assert said is None or said.audience is Audience.CUSTOMER, old


def _told(folder: Path) -> list[str]:
    return [f"{f.severity} {f.id} {f.what} | {f.remedy}" for f in load(folder).findings]


def test_a_word_of_format_1_in_format_2_names_the_new_one(tmp_path: Path) -> None:
    new = _copy(GOOD, tmp_path / "specs")
    file = new / "job.yaml"
    text = file.read_text("utf-8")
    changed = text.replace("overcoat_interval:", "hold:").replace("role: basecoat", "role: base-coat")
    assert changed != text
    file.write_text(changed, "utf-8")
    told = _told(new)
    assert (
        "error MOD001 hold is not a key known here | write overcoat_interval: hold is its name in source format 1"
        in told
    )
    assert [line.partition(" | ")[2] for line in told if "base-coat" in line] == [
        "write basecoat: base-coat is its name in source format 1"
    ]


def test_a_word_of_format_2_in_format_1_counts_and_is_told(tmp_path: Path) -> None:
    old = _copy(OLD / "good", tmp_path / "specs")
    file = old / "job.yaml"
    text = file.read_text("utf-8")
    file.write_text(text.replace("hold:", "overcoat_interval:", 1), "utf-8")
    assert canonical(_spec(old)) == canonical(_spec(OLD / "good"))
    (told,) = _told(old)
    assert told.startswith(
        "warning MOD010 overcoat_interval in this file belongs to source format 2, but the project states no schema_version"
    )
    assert "specgen upgrade" in told


def test_both_names_of_one_key_are_a_fault(tmp_path: Path) -> None:
    old = _copy(OLD / "good", tmp_path / "specs")
    file = old / "job.yaml"
    text = file.read_text("utf-8")
    file.write_text(text.replace("hold: ", "overcoat_interval: 1 h..2 h, hold: ", 1), "utf-8")
    told = _told(old)
    assert any(line.startswith("error MOD001 hold is not a key known here") for line in told)


@pytest.mark.parametrize("version", ["0", "3", "99", "2.0", "two"])
def test_a_version_nobody_knows_is_refused(version: str, tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    new = _copy(GOOD, tmp_path / "specs")
    file = new / "project.yaml"
    file.write_text(file.read_text("utf-8").replace("schema_version: 2", f"schema_version: {version}"), "utf-8")
    assert f"error MOD010 schema_version is {version}; this program reads 1 and 2" in "\n".join(_told(new))
    before = file.read_bytes()
    assert main(["upgrade", str(new)]) == 2
    assert "MOD010" in capsys.readouterr().err
    assert file.read_bytes() == before


@pytest.mark.parametrize("whole", range(3))
def test_whoever_is_stopped_in_between_finds_the_folder_as_it_was(
    whole: int, tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    """After `whole` files the disk refuses: what stands there reads as before, and a second run finishes."""
    old = _copy(OLD / "good", tmp_path / "specs")
    done: list[str] = []
    replace = writing.os.replace

    def refusing(source: Any, target: Any) -> None:
        if len(done) == whole:
            raise OSError(28, "No space left on device")
        done.append(str(target))
        replace(source, target)

    monkeypatch.setattr(writing.os, "replace", refusing)
    assert main(["upgrade", str(old)]) == 2
    assert "No space left on device" in capsys.readouterr().err
    monkeypatch.undo()
    assert sorted(path.name for path in old.iterdir()) == sorted(path.name for path in (OLD / "good").iterdir())
    assert canonical(_spec(old)) == canonical(_spec(OLD / "good"))
    assert {(f.id, f.severity) for f in load(old).findings} <= {("MOD010", Severity.WARNING)}
    assert main(["upgrade", str(old)]) == 0
    assert canonical(_spec(old)) == canonical(_spec(OLD / "good"))
    assert load(old).findings == []


ODD = {
    "line ends of Windows": lambda raw: raw.replace(b"\n", b"\r\n"),
    "a byte order mark": lambda raw: b"\xef\xbb\xbf" + raw,
    "a value in quotes": lambda raw: raw.replace(b"role: primer", b"role: 'primer'").replace(
        b"role: base-coat", b'role: "base-coat"'
    ),
    "a key in quotes": lambda raw: raw.replace(b"hold:", b'"hold":'),
    "a comment that names old words": lambda raw: raw + b"# hold: 1 h, role: base-coat\n",
}


@pytest.mark.parametrize("odd", ODD, ids=list(ODD))
def test_odd_files_are_rewritten_in_place(odd: str, tmp_path: Path) -> None:
    old = _copy(OLD / "good", tmp_path / "specs")
    for file in old.glob("*.yaml"):
        file.write_bytes(ODD[odd](file.read_bytes()))
    before = canonical(_spec(old))
    ends = {file.name: file.read_bytes().count(b"\r\n") for file in old.iterdir()}
    assert main(["upgrade", str(old)]) == 0
    assert canonical(_spec(old)) == before
    assert load(old).findings == []
    more = 1 if odd.startswith("line ends") else 0
    assert {file.name: file.read_bytes().count(b"\r\n") for file in old.iterdir()} == ends | {
        "project.yaml": ends["project.yaml"] + more
    }
    if "comment" in odd:
        assert all(file.read_bytes().endswith(b"# hold: 1 h, role: base-coat\n") for file in old.glob("*.yaml"))


def test_a_project_between_braces_gets_its_version(tmp_path: Path) -> None:
    old = _copy(OLD / "good", tmp_path / "specs")
    whole = yaml.load((old / "project.yaml").read_text("utf-8"), Loader=yaml.CBaseLoader)
    (old / "project.yaml").write_text(
        yaml.dump(whole, Dumper=yaml.CSafeDumper, default_flow_style=True, width=1000, sort_keys=False), "utf-8"
    )
    assert main(["upgrade", str(old)]) == 0
    assert canonical(_spec(old)) == canonical(_spec(OLD / "good"))
    assert "schema_version: 2, id:" in (old / "project.yaml").read_text("utf-8")


def test_a_word_that_cannot_be_replaced_stops_it_all(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    old = _copy(OLD / "good", tmp_path / "specs")
    file = old / "job.yaml"
    file.write_text(file.read_text("utf-8").replace("role: base-coat", 'role: "base\\x2dcoat"'), "utf-8")
    before = {one.name: one.read_bytes() for one in old.iterdir()}
    assert main(["upgrade", str(old)]) == 2
    assert "written by codes" in capsys.readouterr().err
    assert {one.name: one.read_bytes() for one in old.iterdir()} == before


def test_sources_with_faults_are_not_rewritten(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    old = _copy(OLD / "good", tmp_path / "specs")
    (old / "odd.yaml").write_text("systems: [\n", "utf-8")
    before = {one.name: one.read_bytes() for one in old.iterdir()}
    assert main(["upgrade", str(old)]) == 2
    assert "odd.yaml:1" in capsys.readouterr().err
    assert {one.name: one.read_bytes() for one in old.iterdir()} == before


def test_a_waiver_of_format_1_finds_its_value() -> None:
    assert new_address("systems.cab.layers.top.hold") == "systems.cab.layers.top.overcoat_interval"
    assert new_address("jobs.refit.air.flow") == "jobs.refit.ventilation.flow"
    assert new_address("jobs.refit.climate.air") == "jobs.refit.climate.air"


def test_a_folder_without_a_project_is_read_in_the_present_words() -> None:
    read, _ = read_text(b"systems: []\n", "a.yaml")
    assert [f.id for f in parse(Sources(GOOD, (read,), ())).findings] == ["MOD007", "MOD008"]
