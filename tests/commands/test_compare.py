"""`specgen compare`: sides, formats, exit codes, decisions, the notice, and what it says where it cannot."""

from __future__ import annotations

import json
import os
import re
import shutil
import subprocess
from pathlib import Path

import jsonschema
import pytest

from specgen.commands import main
from specgen.commands import sides as sides_of_compare
from specgen.report.change_json import schema
from specgen.rules.titles import title_of
from specgen.source.git import Git
from specgen.source.project import read_project
from tests.good_spec import GOOD

ON = ["--on", "2026-11-25"]
FOR_MAKER = ([], ["--for", "customer"], ["--for", "maker"], ["--audience", "maker"], ["--audience=maker"])


@pytest.fixture
def sides(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """The good sources twice, as the folders `old` and `new` of the current one."""
    for name in ("old", "new"):
        shutil.copytree(GOOD, tmp_path / name)
    monkeypatch.chdir(tmp_path)
    return tmp_path


def _change(file: Path, old: str, new: str) -> None:
    text = file.read_text("utf-8")
    assert text.count(old) >= 1
    file.write_text(text.replace(old, new, 1), "utf-8")


def _weaken(folder: Path) -> None:
    _change(folder / "job.yaml", "film: {min: 40 um, nominal: 60 um", "film: {min: 38 um, nominal: 60 um")


def _at(file: Path, text: str) -> tuple[int, int]:
    """Line and column of a text in a file, both from 1."""
    lines = file.read_text("utf-8").splitlines()
    line = next(number for number, held in enumerate(lines) if text in held)
    return line + 1, lines[line].index(text) + 1


def _run(*arguments: str, capsys: pytest.CaptureFixture[str]) -> tuple[int, str, str]:
    code = main(["compare", *arguments, *ON])
    said = capsys.readouterr()
    return code, said.out, said.err


def test_nothing_changed(sides: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert _run("old", "new", "--fail-on", "any", capsys=capsys) == (0, "old -> new: no value changed.\n", "")


def test_text_names_both_places(sides: Path, capsys: pytest.CaptureFixture[str]) -> None:
    _weaken(sides / "new")
    line, column = _at(sides / "new/job.yaml", "38 um, nominal: 60 um")
    code, out, err = _run("old", "new", capsys=capsys)
    assert (code, err) == (0, "")
    assert out.replace("\N{NO-BREAK SPACE}", " ").startswith(
        "old -> new: 1 relaxed.\n\n"
        "ERRORS THAT ARE NEW (they shut every gate)\n"
        "- appeared: error FLM003 at systems.cab.layers.primer.film.min\n\n"
        "RELAXED (more is accepted, or less is asked for)\n"
        "- film, relaxed: Minimum DFT of the primer of the system cab (Primer, base coat and clear) fell from\n"
        "  40 µm to 38 µm.\n"
        f"    old old/job.yaml:{line}:{column}\n"
        f"    new new/job.yaml:{line}:{column}\n"
        "    in MS-001: DOOR\n"
    )
    assert out.count("FLM003") == 1


@pytest.mark.parametrize(
    ("gate", "old", "new", "code"),
    [
        ("relaxed", "min: 40 um, nominal: 60", "min: 38 um, nominal: 60", 1),
        ("relaxed", "min: 40 um, nominal: 60", "min: 42 um, nominal: 60", 0),
        ("safety", "No gloss left.", "No gloss.", 0),
        ("any", "min: 40 um, nominal: 60", "min: 42 um, nominal: 60", 1),
        ("relaxed", "No gloss left.", "No gloss.", 1),
    ],
)
def test_gates(gate: str, old: str, new: str, code: int, sides: Path, capsys: pytest.CaptureFixture[str]) -> None:
    _change(sides / "new/job.yaml", old, new)
    assert _run("old", "new", "--fail-on", gate, capsys=capsys)[0] == code


def test_json_follows_its_schema(sides: Path, capsys: pytest.CaptureFixture[str]) -> None:
    jsonschema.Draft202012Validator.check_schema(schema())
    _weaken(sides / "new")
    _change(sides / "new/products.yaml", "min: 60 um, nominal: 80 um", "min: 2.36 mil, nominal: 80 um")
    _change(
        sides / "new/job.yaml", "      - {id: STEP, name: Step tube, count: 4, area: 0.12 m2, system: chassis}\n", ""
    )
    _change(sides / "new/job.yaml", "No gloss left.", "No gloss.")
    by_reader = {}
    for reader in ("customer", "maker"):
        code, out, _ = _run("old", "new", "--format", "json", "--audience", reader, capsys=capsys)
        told = by_reader[reader] = json.loads(out)
        jsonschema.validate(told, schema())
        assert code == 0
    paths = {change["path"]: change["effect"] for change in told["changes"]}
    assert paths == {
        "systems.cab.layers.primer.film.min": "relaxed",
        "products.barrier.film.min": "relaxed",
        "jobs.refit.items.STEP": "relaxed",
        "preparations.sand-steel.steps.sand.acceptance": "reworded",
    }
    assert told["figures"]
    assert told["findings"]
    # a customer is told which rule speaks, in its title, and neither where nor of which value
    named = [side for moved in by_reader["customer"]["findings"] for side in moved.values() if side is not None]
    assert len(by_reader["customer"]["findings"]) == len(told["findings"])
    assert all(side["title"] == title_of(side["id"]) and set(side) == {"id", "severity", "title"} for side in named)
    # a customer's copy names neither what the user typed nor where it stands
    folders = _run("old", str(sides / "new"), "--format", "json", capsys=capsys)[1]
    assert (json.loads(folders)["old"], json.loads(folders)["new"]) == ("old", "new")
    assert str(sides) not in folders


def test_annotations_stand_beside_the_new_lines(sides: Path, capsys: pytest.CaptureFixture[str]) -> None:
    _weaken(sides / "new")
    _change(sides / "new/products.yaml", "signal_word: Danger", "signal_word: Warning")
    line, column = _at(sides / "new/job.yaml", "38 um, nominal: 60 um")
    word, at = _at(sides / "new/products.yaml", "Warning")
    lines = _run("old", "new", "--format", "github", capsys=capsys)[1].splitlines()
    assert [re.sub(r"::[^:]*$", "", line) for line in lines[:-1]] == [
        f"::error file=new/products.yaml,line={word},col={at},endColumn={at + 6},title=safety%2C relaxed",
        f"::warning file=new/job.yaml,line={line},col={column},endColumn={column + 4},title=film%2C relaxed",
    ]
    assert lines[-1] == "2 relaxed (1 of safety)."


def test_decisions_beside_the_sources(sides: Path, capsys: pytest.CaptureFixture[str]) -> None:
    _change(sides / "new/job.yaml", "No gloss left.", "No gloss.")
    out = _run("old", "new", capsys=capsys)[1]
    found = re.search(r"fingerprint ([0-9a-f]{16})", out)
    assert found is not None
    said = f"{{fingerprint: {found[1]}, decision: neutral, who: A. Body, reason: the same, on: 2026-11-25}}"
    (sides / "new/decisions.yaml").write_text(
        f"decisions:\n  - {said}\n  - {said.replace(found[1], '0' * 16)}\n", "utf-8"
    )
    code, out, _ = _run("old", "new", "--fail-on", "relaxed", capsys=capsys)
    assert code == 0
    assert "decision neutral, A. Body, 2026-11-25: the same" in out
    assert f"DECISIONS WITHOUT THEIR CHANGE\n- {'0' * 16} by A. Body, 2026-11-25: decisions.yaml:3:6\n" in out
    # the file is none of the sources
    assert main(["check", "new", *ON]) == 0
    (sides / "new/decisions.yaml").write_text("decisions: none\n", "utf-8")
    code, out, err = _run("old", "new", capsys=capsys)
    assert (code, err) == (2, "specgen: the decisions cannot be read\n")
    assert "decisions.yaml:1:12: error MOD004" in out


def test_decisions_under_their_former_name(sides: Path, capsys: pytest.CaptureFixture[str]) -> None:
    _change(sides / "new/job.yaml", "No gloss left.", "No gloss.")
    found = re.search(r"fingerprint ([0-9a-f]{16})", _run("old", "new", capsys=capsys)[1])
    assert found is not None
    text = f"verdicts:\n  - {{fingerprint: {found[1]}, verdict: neutral, who: A. Body, reason: the same, on: 2026-11-25}}\n"
    file = sides / "new/verdicts.yaml"
    file.write_text(text, "utf-8")
    code, out, err = _run("old", "new", "--fail-on", "relaxed", capsys=capsys)
    assert (code, "decision neutral, A. Body, 2026-11-25: the same" in out) == (0, True)
    assert err == (
        "specgen: verdicts.yaml is now called decisions.yaml, its keys decisions and decision; `specgen upgrade` renames them\n"
    )
    # the file is none of the sources under this name either
    assert main(["check", "new", *ON]) == 0
    capsys.readouterr()
    file.rename(sides / "new/decisions.yaml")
    code, out, err = _run("old", "new", "--fail-on", "relaxed", capsys=capsys)
    assert (code, "decision neutral" in out) == (0, True)
    assert err == "specgen: decisions.yaml: the keys verdicts and verdict are now called decisions and decision\n"
    file.write_text("", "utf-8")
    code, out, err = _run("old", "new", capsys=capsys)
    assert (code, out) == (2, "")
    assert err == (
        "specgen: new holds both decisions.yaml and verdicts.yaml, which is its former name; bring them together in "
        "decisions.yaml and delete verdicts.yaml\n"
    )


def test_the_former_name_of_audience_is_understood_and_not_listed(
    sides: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    _change(sides / "new/job.yaml", "No gloss left.", "No gloss.")
    told = [_run("old", "new", "--format", "json", *more, capsys=capsys)[1] for more in FOR_MAKER]
    assert told[0] == told[1] != told[2] == told[3] == told[4]
    assert main(["compare", "--help"]) == 0
    shown = capsys.readouterr().out
    assert "--audience {customer,maker}" in shown
    assert "--for " not in shown


def test_renames_are_declared(sides: Path, capsys: pytest.CaptureFixture[str]) -> None:
    _change(sides / "new/job.yaml", "{id: DOOR, name: ", "{id: DOOR-L, name: Left ")
    assert "is now called" not in _run("old", "new", capsys=capsys)[1]
    (sides / "answers.yaml").write_text("renames:\n  - {old: jobs.refit.items.DOOR, new: DOOR-L}\n", "utf-8")
    code, out, _ = _run("old", "new", "--decisions", "answers.yaml", "--fail-on", "relaxed", capsys=capsys)
    assert (code, "The item DOOR is now called DOOR-L" in out) == (0, True)


def test_broken_entry_is_named_and_shuts_the_gate(sides: Path, capsys: pytest.CaptureFixture[str]) -> None:
    _change(sides / "new/products.yaml", "min: 60 um, nominal: 80 um", "min: sixty um, nominal: 80 um")
    _weaken(sides / "new")
    code, out, _ = _run("old", "new", "--fail-on", "safety", capsys=capsys)
    assert code == 1
    assert (
        "NOT COMPARED (has errors on one side, or may stand in a file that was not read)\n- products.barrier\n- systems.chassis\n- jobs.refit\n"
        in out
    )
    assert "fell from\n  40" in out
    assert out.count("relaxed:") == 1, "nothing is said of what could not be compared"


@pytest.mark.parametrize("gate", ["relaxed", "safety", "any"])
def test_a_file_that_cannot_be_read_shuts_every_gate_and_stands_first(
    sides: Path, capsys: pytest.CaptureFixture[str], gate: str
) -> None:
    """A stray quote in NEW: what is gone with it was not taken out, and nobody can say that nothing became weaker."""
    _change(sides / "new/job.yaml", "overcoat_interval: 30 min..24 h", 'overcoat_interval: "30 min..24 h')
    code, out, _ = _run("old", "new", "--fail-on", gate, "--notice", "notice", capsys=capsys)
    assert code == 1
    blocks = out.split("\n\n")
    assert blocks[1] == "NOT READ (what stands in these files is not compared)\n- new: job.yaml"
    assert "- jobs.refit" in out
    assert blocks[0] == "old -> new: no value changed in what could be compared."
    assert "was removed" not in out
    assert "job was" not in out
    page = next(Path("notice").glob("*.html")).read_text("utf-8")
    assert "One source file could not be read" in page
    assert page.index("could not be read") < page.index(
        "No requirement has been relaxed in the part that could be compared."
    )
    assert "No requirement has been relaxed, as far as the values show." not in page


def test_findings_of_a_customers_notice_are_named_and_told_once(
    sides: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    """Two references that lead nowhere, of which a customer is told neither address nor words."""
    job = sides / "new/job.yaml"
    job.write_text(re.sub(r"product: (primer|barrier)", "product: gone", job.read_text("utf-8")), "utf-8")
    _run("old", "new", "--notice", "notice", capsys=capsys)
    page = next(Path("notice").glob("*.html")).read_text("utf-8")
    assert page.count("MOD005") == 1
    assert re.search(r"A reference has no target \(\d+ times\)", page)


@pytest.mark.parametrize("gate", ["relaxed", "safety", "any"])
def test_a_new_error_shuts_every_gate(sides: Path, capsys: pytest.CaptureFixture[str], gate: str) -> None:
    """Tightened, and wrong: the maximum of the coat is now below the minimum of its product."""
    _change(sides / "new/job.yaml", "min: 40 um, nominal: 60 um, max: 80 um", "min: 40 um, nominal: 50 um, max: 39 um")
    code, out, _ = _run("old", "new", "--fail-on", gate, capsys=capsys)
    assert (code, "appeared: error FLM001" in out) == (1, True)


def test_side_without_a_project_is_refused_with_its_findings(sides: Path, capsys: pytest.CaptureFixture[str]) -> None:
    (sides / "new/project.yaml").write_text("project: {}\n", "utf-8")
    code, out, err = _run("old", "new", capsys=capsys)
    assert (code, err) == (2, "specgen: new cannot be compared\n")
    assert "new/project.yaml:1:1: error MOD002" in out


def test_two_large_sides_are_judged_at_the_same_time_with_the_same_answer(
    sides: Path, capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    """Findings, figures with their causes, places and entries that cannot be read come from another process as from this one."""
    _weaken(sides / "new")
    _change(sides / "new/job.yaml", "passes: 4", "passes: 3")
    _change(sides / "old/job.yaml", "name: Step tube, count: 4", "name: Step tube, count: 2")
    _change(sides / "old/products.yaml", "  - id: barrier\n", "  - id: barrier\n    colour_of_lid: red\n")
    (sides / "old/broken.yaml").write_text("products: [\n", "utf-8")
    asked = [["old", "new", *more] for more in (["--audience", "maker"], ["--format", "json"], ["--format", "github"])]
    alone = [_run(*each, capsys=capsys) for each in asked]
    read: list[Path] = []
    monkeypatch.setattr(sides_of_compare, "is_large", lambda folder: True)
    monkeypatch.setattr(sides_of_compare, "read_with_range", lambda folder: read.append(folder) or read_project(folder))
    assert [_run(*each, capsys=capsys) for each in asked] == alone
    assert read == [Path("new")] * 3
    assert "colour_of_lid" in alone[0][1]
    (sides / "old/project.yaml").unlink()
    refused = _run("old", "new", capsys=capsys)
    assert refused[0] == 2
    monkeypatch.setattr(sides_of_compare, "is_large", lambda folder: False)
    assert _run("old", "new", capsys=capsys) == refused


@pytest.fixture
def repository(sides: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """The folder `new` under version control in its first state, changed since."""

    def git(*arguments: str) -> None:
        who = ["-c", "user.name=a", "-c", "user.email=a@b.example", "-c", "commit.gpgsign=false"]
        subprocess.run(["git", *who, *arguments], cwd=sides, check=True, capture_output=True)

    git("init", "--quiet")
    git("add", "new")
    git("commit", "--quiet", "--message", "first")
    git("tag", "A")
    _weaken(sides / "new")
    return sides


def test_revision_of_a_repository(
    repository: Path, capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    line, column = _at(repository / "new/job.yaml", "38 um, nominal: 60 um")
    before = sorted((str(path), path.stat().st_mtime_ns) for path in repository.rglob("*"))
    for spelling in ("git:HEAD:new", "git:A:new", "git:A:./new/", "git:A:new/job.yaml"):
        code, out, err = _run(spelling, "new", capsys=capsys)
        assert (code, err) == (0, "")
        assert "fell from\n  40" in out
        place = f"new/job.yaml:{line}:{column}"
        assert f"    old {spelling.split(':')[1]}:{place}\n    new {place}\n" in out
    assert sorted((str(path), path.stat().st_mtime_ns) for path in repository.rglob("*")) == before, (
        "nothing is written"
    )
    monkeypatch.chdir(repository / "new")
    assert _run("git:A:", ".", capsys=capsys)[0] == 0
    assert _run("git:A:../new", "git:A:", "--fail-on", "any", capsys=capsys)[0] == 0


@pytest.mark.parametrize("name", ["decisions.yaml", "verdicts.yaml"])
def test_decisions_of_a_revision(repository: Path, name: str, capsys: pytest.CaptureFixture[str]) -> None:
    (repository / "new" / name).write_text("renames:\n  - {old: systems.cab, new: cabin}\n", "utf-8")
    _change(repository / "new/job.yaml", "  - id: cab\n", "  - id: cabin\n")
    _change(repository / "new/job.yaml", "    system: cab\n", "    system: cabin\n")
    who = ["-c", "user.name=a", "-c", "user.email=a@b.example", "-c", "commit.gpgsign=false"]
    subprocess.run(["git", "add", "new"], cwd=repository, check=True)
    subprocess.run(["git", *who, "commit", "--quiet", "-m", "y"], cwd=repository, check=True)
    _, out, err = _run("git:A:new", "git:HEAD:new", capsys=capsys)
    assert ("verdicts.yaml is now called decisions.yaml" in err) == (name == "verdicts.yaml")
    assert "The system cab is now called cabin" in out
    assert "was removed" not in out


def _git(folder: Path, *arguments: str) -> str:
    who = ("-c", "user.name=x", "-c", "user.email=x@example.org")
    done = subprocess.run(["git", *who, *arguments], cwd=folder, check=True, capture_output=True, text=True)
    return done.stdout.strip()


def test_a_huge_file_of_a_revision_is_not_asked_for(
    repository: Path, capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    """One blob under ten names, past the bound: git would hand over all of it ten times."""
    for number in range(10):
        (repository / f"new/big{number}.yaml").write_bytes(b"# " + b"x" * (3 * 1024 * 1024))
    _git(repository, "add", "new")
    _git(repository, "commit", "--quiet", "-m", "big")
    blob = _git(repository, "rev-parse", "HEAD:new/big0.yaml")
    asked, contents = [], Git.contents
    monkeypatch.setattr(Git, "contents", lambda git, blobs: asked.extend(blobs) or contents(git, blobs))
    _, out, err = _run("git:HEAD:new", "old", capsys=capsys)
    assert asked
    assert blob not in asked
    assert (out.count("error SRC001"), err) == (10, "")


def test_a_tree_that_names_itself_twice_is_given_up(
    repository: Path, capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    """Thirty floors of two folders each, which are one: git lists a thousand million files and never ends."""

    def tree(*entries: tuple[str, str, str]) -> str:
        raw = b"".join(f"{mode} {name}\0".encode() + bytes.fromhex(held) for mode, held, name in entries)
        made = subprocess.run(
            ["git", "hash-object", "-w", "-t", "tree", "--stdin"], cwd=repository, input=raw, capture_output=True
        )
        return made.stdout.decode().strip()

    blob = _git(repository, "rev-parse", "HEAD:new/job.yaml")
    doubled = tree(("100644", blob, "a.yaml"))
    for _ in range(30):
        doubled = tree(("40000", doubled, "a"), ("40000", doubled, "b"))
    _git(repository, "tag", "bad", _git(repository, "commit-tree", "-m", "x", doubled))
    monkeypatch.setattr(Git.run, "__defaults__", (b"", 100_000))
    code, out, err = _run("git:bad:", "old", capsys=capsys)
    assert (code, out) == (2, "")
    assert "git lists more than can be read; name the folder of the sources" in err


@pytest.mark.parametrize("how", ["gone", "rubbish"])
def test_an_object_git_cannot_read_is_said_in_a_line(
    repository: Path, capsys: pytest.CaptureFixture[str], how: str
) -> None:
    blob = _git(repository, "rev-parse", "A:new/job.yaml")
    path = repository / ".git/objects" / blob[:2] / blob[2:]
    path.chmod(0o644)
    if how == "gone":
        path.unlink()
    else:
        path.write_bytes(b"rubbish")
    code, out, err = _run("git:A:new", "new", capsys=capsys)
    assert (code, out, err.count("\n")) == (2, "", 1)
    assert err.startswith("specgen: git ")
    assert "internal fault" not in err


def test_repository_runs_nothing_of_its_own(repository: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """A repository someone sends may bring filters and hooks; none of them runs."""
    trap = repository / "trap.sh"
    trap.write_text("#!/bin/sh\ntouch sprung\ncat\n", "utf-8")
    trap.chmod(0o755)
    (repository / ".git/info/attributes").write_text("*.yaml filter=trap diff=trap export-ignore\n", "utf-8")
    with (repository / ".git/config").open("a", encoding="utf-8") as config:
        config.write('[filter "trap"]\n smudge = ./trap.sh\n clean = ./trap.sh\n[diff "trap"]\n textconv = ./trap.sh\n')
        config.write("[core]\n fsmonitor = ./trap.sh\n pager = ./trap.sh\n")
    for hook in ("post-checkout", "reference-transaction"):
        (repository / ".git/hooks" / hook).write_text(trap.read_text("utf-8"), "utf-8")
        (repository / ".git/hooks" / hook).chmod(0o755)
    code, out, _ = _run("git:A:new", "new", capsys=capsys)
    assert (code, "1 relaxed" in out) == (0, True)
    assert not list(repository.rglob("sprung"))


@pytest.mark.parametrize(
    ("side", "said"),
    [
        ("git:B:new", "git knows no revision 'B' here"),
        ("git:A:old", "old is not in the revision A"),
        ("git:A:../../x", "the path ../../x leads out of the repository"),
        ("git:A:/etc", "the path /etc is absolute; write it from the current folder"),
        ("git:A", "git:A names no revision and path; write git:REVISION:PATH, as in git:HEAD~1:specs"),
        (
            "git:--output=x:new",
            "git:--output=x:new names no revision and path; write git:REVISION:PATH, as in git:HEAD~1:specs",
        ),
        ("nowhere", "nowhere: there is no such file or folder."),
        ("", "a side is empty; name a folder, or git:REVISION:PATH"),
    ],
)
def test_side_that_is_not_there(side: str, said: str, repository: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert _run(side, "new", capsys=capsys) == (2, "", f"specgen: {said}\n")


def test_no_repository(sides: Path, capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv("GIT_CEILING_DIRECTORIES", str(sides.parent))
    code, out, err = _run("git:HEAD:old", "new", capsys=capsys)
    assert (code, out) == (2, "")
    assert err.startswith("specgen: git says: not a git repository")


def test_decisions_that_are_not_there(sides: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert _run("old", "new", "--decisions", "gone.yaml", capsys=capsys) == (
        2, "", "specgen: gone.yaml: there is no such file\n",
    )  # fmt: skip


@pytest.mark.parametrize("how", ["pipe", "link", "folder"])
def test_decisions_are_read_from_an_ordinary_file_alone(
    sides: Path, capsys: pytest.CaptureFixture[str], how: str
) -> None:
    file = sides / "new/decisions.yaml"
    if how == "pipe":
        os.mkfifo(file)
    elif how == "link":
        (sides / "elsewhere").write_text("decisions: []\n", "utf-8")
        file.symlink_to(sides / "elsewhere")
    else:
        file.mkdir()
    for more in ([], ["--decisions", "new/decisions.yaml"]):
        code, out, err = _run("old", "new", *more, capsys=capsys)
        assert (code, out) == (2, "")
        assert err == "specgen: new/decisions.yaml is a link or no ordinary file; decisions are not read from it\n"


def test_notice_without_a_folder(sides: Path, capsys: pytest.CaptureFixture[str]) -> None:
    said = "specgen: the name after --notice is empty; name a folder for the notice\n"
    assert _run("old", "new", "--notice", "", capsys=capsys) == (2, "", said)


def test_notice_is_written(sides: Path, capsys: pytest.CaptureFixture[str]) -> None:
    _weaken(sides / "new")
    code, out, err = _run("old", "new", "--notice", "out", capsys=capsys)
    assert (code, out.startswith("old -> new: 1 relaxed.")) == (0, True)
    names = ["CN-works-fleet-change-notice.pdf", "CN-works-fleet-change-notice.html"]
    assert err == "".join(f"out/{name} written\n" for name in names)
    assert sorted(path.name for path in (sides / "out").iterdir()) == sorted(names)
    html = (sides / "out" / names[1]).read_text("utf-8")
    assert "One requirement has been relaxed; it is not a safety requirement." in html
    assert "<del>40</del>" in html.replace("\n", "")
    assert "<ins>38</ins>" in html.replace("\n", "")


def test_notice_that_cannot_be_written(sides: Path, capsys: pytest.CaptureFixture[str]) -> None:
    (sides / "out").write_text("", "utf-8")
    code, out, err = _run("old", "new", "--notice", "out", capsys=capsys)
    assert (code, out) == (2, "")
    assert err.startswith("specgen: out cannot be written to: ")
