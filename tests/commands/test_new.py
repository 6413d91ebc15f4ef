"""`specgen new`: what it prints can be read, holds every key of the model, and is whole once the open keys are filled."""

from __future__ import annotations

import re
from datetime import date
from pathlib import Path
from shutil import copy, copytree
from typing import Any

import pytest

from specgen.checking import check
from specgen.commands import main
from specgen.findings import Finding
from specgen.model.base_named import BasedOn
from specgen.model.outline import outline, value_type
from specgen.model.parse import Loaded, load, parse
from specgen.model.spec import KINDS, LIST_KINDS, SINGULAR
from specgen.model.walk import models
from specgen.source.project import Sources
from specgen.source.reader import read_text
from specgen.standards.tables import table
from tests.good_spec import GOOD

# what an author could write behind each open key, by the key or by the last two of them
_FILLED = {
    "id": "a",
    "title": "Words",
    "name": "Words",
    "text": "Words",
    "scope": "Words",
    "owner": "Words",
    "number": "A-1",
    "order_number": "A-2",
    "binder": "epoxy_2k",
    "curing": "liquid-two-pack",
    "roles": "[primer]",
    "role": "primer",
    "product": "a",
    "direct_to_metal": "yes",
    "form": "liquid",
    "do": "wash",
    "film": "{min: 40 um}",
    "supplier": "Words",
    "date": "2026-11-26",
    "force": "required",
    "issued": "2026-11-26",
    "edition": '"1"',
    "substrate": "steel_blasted",
    "series": "a",
    "method": "dft",
    "value": "60 um",
    "document": "a",
    "count": "4",
    "material": "steel_cold_rolled",
    "preparation": "a",
    "system": "a",
    "job": "a",
    "items": "[a]",
    "agreed_by": "a",
    "agreed_on": "2026-11-20",
    "until": "2026-12-31",
    "reason": "a",
}


def _printed(kind: str, capsys: pytest.CaptureFixture[str]) -> str:
    """Every key, those that stand open and those struck."""
    return _said(["new", kind, "--all"], capsys)


def _said(arguments: list[str], capsys: pytest.CaptureFixture[str]) -> str:
    assert main(arguments) == 0
    printed = capsys.readouterr()
    assert printed.err == ""
    return printed.out


def _read(*texts: str) -> tuple[Loaded, list[Finding]]:
    read = [read_text(text.encode(), f"{number}.yaml") for number, text in enumerate(texts, 1)]
    faults = [fault for _, found in read for fault in found]
    return parse(Sources(Path(), tuple(source for source, _ in read), ())), faults


def _fill(text: str, values: dict[str, str] = _FILLED) -> str:
    """The text with a value behind every open key that holds none and has nothing indented below it."""
    lines = text.splitlines()
    done = []
    for number, line in enumerate(lines):
        found = re.match(r"( *)(- )?([a-z_]+):( *#.*)?$", line)
        if found:
            depth = len(found[1]) + len(found[2] or "")
            following = next((x for x in lines[number + 1 :] if x.strip() and not x.lstrip().startswith("#")), "")
            # entries of a list stand at the depth of their key or below it
            if len(following) - len(following.lstrip()) <= depth:
                line = f"{found[1]}{found[2] or ''}{found[3]}: {values[found[3]]}"
        done.append(line)
    return "\n".join(done) + "\n"


@pytest.mark.parametrize("kind", SINGULAR)
def test_printed_source_can_be_read(kind: str, capsys: pytest.CaptureFixture[str]) -> None:
    loaded, faults = _read(_printed(kind, capsys))
    assert faults == []
    # what stands open is missing, and nothing else is wrong
    assert {f.id for f in loaded.findings} <= {"MOD002", "MOD007", "MOD008"}


@pytest.mark.parametrize("kind", SINGULAR)
def test_every_comment_taken_away_can_be_read(kind: str, capsys: pytest.CaptureFixture[str]) -> None:
    head, _, body = _printed(kind, capsys).partition("\n")
    assert head.startswith(f"# A new {kind}.")
    open_text = re.sub(r"(?m)^( *)# ", r"\1", body)
    loaded, faults = _read(open_text)
    assert faults == []
    # a key without its value is missing or empty, never unknown and never of the wrong kind
    assert {f.id for f in loaded.findings} <= {"MOD002", "MOD007", "MOD008"}


@pytest.mark.parametrize("kind", SINGULAR)
def test_every_key_of_the_model_is_printed(kind: str, capsys: pytest.CaptureFixture[str]) -> None:
    printed = re.findall(r"(?m)^[ #-]*([a-z_0-9]+):(?: |$)", _printed(kind, capsys).partition("\n")[2])
    root = KINDS[SINGULAR[kind]]

    def keys(model: Any) -> list[str]:
        return [name for key in outline(model) for name in (key.name, *(keys(key.inner) if key.inner else ()))]

    name, *others = keys(root)
    based = list(BasedOn.model_fields) if SINGULAR[kind] in LIST_KINDS else []
    assert printed == [SINGULAR[kind], name, *based, *others]


def test_filled_project_is_whole(capsys: pytest.CaptureFixture[str]) -> None:
    loaded, faults = _read(_fill(_printed("project", capsys)))
    assert faults == []
    assert loaded.findings == []
    assert loaded.spec is not None
    assert loaded.spec.project.title == "Words"


def test_all_kinds_filled_make_a_whole_specification(capsys: pytest.CaptureFixture[str]) -> None:
    texts = [_fill(_printed(kind, capsys)) for kind in SINGULAR]
    loaded, faults = _read(*texts)
    assert faults == []
    assert loaded.findings == []
    spec = loaded.spec
    assert spec is not None
    assert [list(getattr(spec, block)) for block in LIST_KINDS] == [["a"]] * len(LIST_KINDS)


def test_defaults_stand_as_values(capsys: pytest.CaptureFixture[str]) -> None:
    lines = _printed("project", capsys).splitlines()
    shown = {
        line.split(":")[0].strip(): line.split(":")[1].split("  #")[0].strip() for line in lines[1:] if ":" in line
    }
    assert {key: shown[key] for key in ("schema_version", "page_size", "language", "jurisdictions")} == {
        "schema_version": "2",
        "page_size": "A4",
        "language": "en",
        "jurisdictions": "[EU]",
    }


def test_default_written_out_is_the_default() -> None:
    """Whoever keeps a printed default says what would hold without it."""
    seen = []
    for model in {model for root in KINDS.values() for model in models(root)}:
        for key in outline(model):
            info = model.model_fields[key.name]
            kind = value_type(info)
            if key.default is not None:
                assert kind is not None
                many = isinstance(key.default, tuple)
                read = tuple(map(kind.parse, key.default)) if many else kind.parse(str(key.default))
                assert read == info.default
                seen.append(key.name)
    # a yes or no, a word of a list, a number and lists of codes are among them
    assert {"hold_point", "page_size", "approvals_needed", "jurisdictions", "skip"} <= set(seen)


def test_project_word_for_word(capsys: pytest.CaptureFixture[str]) -> None:
    lines = _printed("project", capsys).splitlines()
    assert lines[:8] == [
        "# A new project. Fill every key that stands open; take the # away from those you need besides.",
        "project:",
        "  id:                               # id of the project",
        "  schema_version: 2                 # version of the source format; 1 where it is left out",
        "  title:                            # name of the project",
        "  maker:                            # manufacturer, who issues the documents",
        "    name:                           # name",
        "    # address:                      # address",
    ]


def test_words_of_a_table_are_listed(capsys: pytest.CaptureFixture[str]) -> None:
    (line,) = (line for line in _printed("product", capsys).splitlines() if line.strip().startswith("binder:"))
    assert all(f" {row['id']}" in line for row in table("binder_families").rows)
    assert line.endswith("; `specgen explain table:binder_families` says what each is")


def test_schema_is_named_on_the_first_line(capsys: pytest.CaptureFixture[str]) -> None:
    plain = _printed("job", capsys)
    assert main(["new", "job", "--all", "--schema", "job.schema.json"]) == 0
    assert capsys.readouterr().out == f"# yaml-language-server: $schema=job.schema.json\n{plain}"


@pytest.mark.parametrize("name", ["", " ", "a\nb"])
def test_schema_without_a_file_name(name: str, capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["new", "job", "--schema", name]) == 2
    assert capsys.readouterr().err == (
        "specgen: the name after --schema is no file name; name the file the schema is in\n"
    )


@pytest.mark.parametrize("whole", [[], ["--all"]])
def test_what_may_stand_in_place_of_a_key_is_said(whole: list[str], capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["new", "job", *whole]) == 0
    (line,) = [line for line in capsys.readouterr().out.splitlines() if "# stage of the work" in line]
    assert "or in its place `after`" in line


def test_unknown_kind(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["new", "paint"]) == 2
    assert capsys.readouterr().err.startswith("specgen: KIND: invalid choice: 'paint'")


@pytest.mark.parametrize("kind", SINGULAR)
def test_short_source_names_every_key(kind: str, capsys: pytest.CaptureFixture[str]) -> None:
    """What does not stand open is named after `also:` in its record; what is in a record that does not stand open is not."""
    text = _said(["new", kind], capsys)
    loaded, faults = _read(text)
    assert faults == []
    assert {f.id for f in loaded.findings} <= {"MOD002", "MOD007", "MOD008"}
    named = {key for line in re.findall(r"# also: (.*)", text) for key in line.split(", ")}
    opened = set(re.findall(r"(?m)^ *(?:- )?([a-z_0-9]+):", text))
    assert {key.name for key in outline(KINDS[SINGULAR[kind]])} <= named | opened
    assert len(text.splitlines()) < len(_printed(kind, capsys).splitlines()) / 2 or kind in {"project", "preparation"}


def test_short_sources_filled_miss_nothing(capsys: pytest.CaptureFixture[str]) -> None:
    for kind in SINGULAR:
        text = _said(["new", kind], capsys)
        loaded, faults = _read(_fill(text, _Anything()))
        assert faults == []
        missing = {finding.what.split()[0] for finding in loaded.findings if finding.id == "MOD002"}
        opened = set(re.findall(r"(?m)^ *(?:- )?([a-z_0-9]+):", text))
        assert missing <= opened, f"keys of {kind} that must be there do not stand open: {missing - opened}"


class _Anything(dict[str, str]):
    """A value behind any key, so that none is missing; whether it is of the right kind is no matter here."""

    def __missing__(self, key: str) -> str:
        return "a"


def test_folder_to_fill_in(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    made = tmp_path / "mine"
    assert "is made" in _said(["new", "--folder", str(made)], capsys)
    assert sorted(file.name for file in made.iterdir()) == sorted(f"{kind}.yaml" for kind in SINGULAR)
    found = check(made, date(2026, 11, 26)).report
    assert {finding.id for finding in found} <= {"MOD002", "MOD007", "MOD008"}
    assert main(["new", "--folder", str(made)]) == 2
    assert "is there already" in capsys.readouterr().err
    assert main(["new", "--folder", str(tmp_path / "no" / "where")]) == 2
    assert "is no folder" in capsys.readouterr().err


def test_folder_and_kind_are_two_ways(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["new", "job", "--folder", str(tmp_path / "x")]) == 2
    assert main(["new"]) == 2
    assert main(["new", "product", "--like", "refit", "--path", str(GOOD)]) == 2
    capsys.readouterr()


def test_job_like_another_keeps_what_holds_and_empties_what_was_its_own(capsys: pytest.CaptureFixture[str]) -> None:
    text = _said(["new", "job", "--like", "refit", "--path", str(GOOD)], capsys)
    loaded, faults = _read(text)
    assert faults == []
    assert {f.id for f in loaded.findings} <= {"MOD001", "MOD002", "MOD007", "MOD008", "MOD012"}
    assert "MS-001" not in text
    assert "T-01" not in text
    assert "    # vehicles of the other job left out; write vehicles here where this job has its own\n" in text
    assert "preparation: sand-steel" in text
    assert "transfer_efficiency: 60 %" in text
    assert re.search(r"# still so\? door, step\n +scope: Repainting of doors and steps after repair\.", text)


def test_job_like_marks_a_vehicle_named_by_its_number(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    copy(GOOD / "project.yaml", tmp_path)
    job = "jobs:\n  - id: other\n    vehicles: [Tower wagon 214]\n    scope: Doors of wagon 214.\n    consumption: {dead_volume: volume}\n"
    (tmp_path / "other.yaml").write_text(job, "utf-8")
    text = _said(["new", "job", "--like", "other", "--path", str(tmp_path)], capsys)
    assert "    # still so? 214\n    scope: Doors of wagon 214.\n    consumption" in text


def test_job_like_one_that_is_not_there(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["new", "job", "--like", "refitt", "--path", str(GOOD)]) == 2
    assert "nearest: refit" in capsys.readouterr().err


def test_folder_on_a_range_leaves_out_what_the_range_states(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    folder = tmp_path / "mine"
    assert main(["new", "--folder", str(folder), "--range", "../range"]) == 0
    assert "is made" in capsys.readouterr().out
    assert {file.name for file in folder.iterdir()} == {"project.yaml", "job.yaml"}
    text = _fill((folder / "project.yaml").read_text())
    assert "  range: ../range " in text
    assert not re.search(r"(?m)^  (maker|emergency_phone|users):", text)
    copytree(Path(__file__).parents[2] / "specs_demo" / "range", tmp_path / "range")
    (folder / "project.yaml").write_text(text)
    (folder / "job.yaml").unlink()
    loaded = load(folder)
    assert loaded.findings == []
    assert loaded.spec is not None
    assert loaded.spec.project.maker.name == "Fennholt Surface Works"


@pytest.mark.parametrize("asked", [["--folder", "new", "--range", "/range"], ["job", "--range", "../range"]])
def test_range_that_is_no_way_or_without_a_folder(asked: list[str], tmp_path: Path) -> None:
    assert main(["new", *(str(tmp_path / one) if one == "new" else one for one in asked)]) == 2
    assert not (tmp_path / "new").exists()


@pytest.mark.parametrize(
    "job",
    [
        "jobs: [{id: other, scope: Two-coat repair}]\n",
        "jobs:\n  [\n  {id: other,\n  scope: Repair},\n  ]\n",
        "jobs:\n  -\n    id: other\n    scope: Repair\n",
        'jobs:\n  - "id": other\n    scope: Repair\n',
    ],
)
def test_job_that_is_not_written_line_by_line_is_not_copied(
    tmp_path: Path, capsys: pytest.CaptureFixture[str], job: str
) -> None:
    copy(GOOD / "project.yaml", tmp_path)
    (tmp_path / "other.yaml").write_text(job, "utf-8")
    assert main(["new", "job", "--like", "other", "--path", str(tmp_path)]) == 2
    told = capsys.readouterr()
    assert told.out == ""
    assert "other.yaml:" in told.err
    assert "write each key on a line of its own" in told.err


def test_job_without_depth_below_its_list_is_copied(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    copy(GOOD / "project.yaml", tmp_path)
    (tmp_path / "other.yaml").write_text("jobs:\n- scope: Repair\n  id: other\n- id: third\n", "utf-8")
    text = _said(["new", "job", "--like", "other", "--path", str(tmp_path)], capsys)
    assert text.splitlines()[1:] == ["jobs:", "  # still so?", "  - scope: Repair", "    id:"]
