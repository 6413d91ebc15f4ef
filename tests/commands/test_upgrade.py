"""`specgen upgrade` and the file of decisions beside the sources: its name and its words, and nothing half-done."""

from __future__ import annotations

import shutil
from pathlib import Path

import pytest

from specgen.commands import main
from specgen.comparison.decisions import answers_in
from specgen.source.reader import read_text
from tests.good_spec import GOOD

OLD = """\
# agreed in the meeting of the yard
verdicts:
  - {fingerprint: 3f00, verdict: neutral, who: A. Body, reason: 'a verdict: the same', on: 2026-11-25}  # kept
renames:
  - {old: systems.cab.layers.primer.hold, new: base}
"""
NEW = OLD.replace("verdicts:", "decisions:").replace(", verdict:", ", decision:").replace(".hold", ".overcoat_interval")


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    shutil.copytree(GOOD.parent / "format_1" / "good", tmp_path / "specs")
    (tmp_path / "specs/verdicts.yaml").write_text(OLD, "utf-8")
    return tmp_path / "specs"


def _held(folder: Path) -> dict[str, bytes]:
    return {file.name: file.read_bytes() for file in folder.iterdir()}


def test_the_file_is_renamed_and_rewritten_with_the_sources(folder: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["upgrade", str(folder)]) == 0
    out = capsys.readouterr().out.splitlines()
    assert "verdicts.yaml: 3 words replaced" in out
    assert out[-2:] == ["verdicts.yaml is now called decisions.yaml", "The folder is now in source format 2."]
    assert not (folder / "verdicts.yaml").exists()
    assert (folder / "decisions.yaml").read_text("utf-8") == NEW
    before = _held(folder)
    assert main(["upgrade", str(folder)]) == 0
    assert capsys.readouterr().out == "The folder is in source format 2 already; nothing was rewritten.\n"
    assert _held(folder) == before


def test_a_folder_whose_sources_are_new_has_its_decisions_renamed(
    folder: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    (folder / "verdicts.yaml").unlink()
    assert main(["upgrade", str(folder)]) == 0
    (folder / "verdicts.yaml").write_text("renames: []\n", "utf-8")
    capsys.readouterr()
    assert main(["upgrade", str(folder)]) == 0
    assert capsys.readouterr().out.splitlines()[0] == "verdicts.yaml is now called decisions.yaml"
    assert (folder / "decisions.yaml").read_text("utf-8") == "renames: []\n"


@pytest.mark.parametrize("words", ["both", "broken", "codes", "link"])
def test_nothing_is_rewritten_where_the_file_cannot_be(
    folder: Path, words: str, capsys: pytest.CaptureFixture[str]
) -> None:
    file = folder / "verdicts.yaml"
    if words == "both":
        (folder / "decisions.yaml").write_text(NEW, "utf-8")
    elif words == "broken":
        file.write_text("verdicts: [\n", "utf-8")
    elif words == "codes":
        file.write_text('"verdict\\x73": []\n', "utf-8")
    else:
        file.unlink()
        (folder.parent / "elsewhere").write_text(OLD, "utf-8")
        file.symlink_to(folder.parent / "elsewhere")
    before = _held(folder)
    assert main(["upgrade", str(folder)]) == 2
    says = {
        "both": "holds both decisions.yaml and verdicts.yaml",
        "broken": "put this right first, nothing was rewritten",
        "codes": "nothing was rewritten",
        "link": "is a link or no ordinary file",
    }
    assert says[words] in capsys.readouterr().err
    assert _held(folder) == before


def test_stopped_before_the_renaming_the_file_still_reads_and_the_next_run_ends_it(
    folder: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    def full(_: Path, __: Path) -> None:
        raise OSError(28, "No space left on device")

    with monkeypatch.context() as patched:
        patched.setattr(Path, "rename", full)
        assert main(["upgrade", str(folder)]) == 2
    assert "No space left on device" in capsys.readouterr().err
    answers, faults = answers_in(*read_text((folder / "verdicts.yaml").read_bytes(), "verdicts.yaml"))
    assert (faults, len(answers.decisions), answers.in_old_words) == ([], 1, False)
    assert main(["upgrade", str(folder)]) == 0
    assert (folder / "decisions.yaml").read_text("utf-8") == NEW
