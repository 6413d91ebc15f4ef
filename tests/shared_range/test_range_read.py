"""A shared range is read as if its records stood in the folder, or not at all; what is wrong with it is told at its place."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

import pytest

from specgen.checking import Checked, check
from specgen.commands import main
from specgen.findings import Finding, Severity
from specgen.model.canonical import model_of
from specgen.source import project
from tests.good_spec import GOOD, ON, spec_of
from tests.two_folders import RANGE, git, kept_in_git, two_folders

Folders = Callable[[Path], None]


def _errors(folder: Path) -> list[Finding]:
    return [f for f in check(folder, ON).report if f.severity is not Severity.NOTE]


def _places(checked: Checked) -> list[str]:
    return [f"{f.id} {f.place}" for f in checked.report if f.severity is not Severity.NOTE]


def _edit(file: Path, old: str, new: str) -> None:
    text = file.read_text("utf-8")
    assert old in text
    file.write_text(text.replace(old, new), "utf-8")


def test_records_of_the_range_stand_as_if_they_stood_here(tmp_path: Path) -> None:
    parted = check(two_folders(tmp_path), ON)
    assert _places(parted) == []
    both, one = model_of(spec_of(parted)), model_of(spec_of(check(GOOD, ON)))
    assert both["project"].pop("range") == "../range"
    assert both == one
    assert list(spec_of(parted).products) == list(spec_of(check(GOOD, ON)).products)


def test_a_range_is_sound_without_a_customer(tmp_path: Path) -> None:
    two_folders(tmp_path)
    checked = check(tmp_path / "range", ON)
    assert _places(checked) == []
    assert spec_of(checked).project.customer is None


def test_jobs_need_a_customer(tmp_path: Path) -> None:
    folder = two_folders(tmp_path)
    _edit(folder / "project.yaml", "  customer:\n    name: Example Yard\n", "")
    assert [f"{f.id} {f.path} {f.place}" for f in _errors(folder)] == ["DOC004 project.customer project.yaml:1:1"]


def test_what_the_project_states_goes_before_the_range(tmp_path: Path) -> None:
    folder = two_folders(tmp_path, own={"project.maker": {"name": "Yard Paints"}})
    held = spec_of(check(folder, ON)).project
    assert held.maker.name == "Yard Paints"
    assert held.users is not None
    assert held.title == "Yard tractors"
    assert held.customer is not None


def test_a_fault_in_the_range_is_told_at_its_place(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    folder = two_folders(tmp_path, of_range={"products.primer.film.max": "75 um"})
    assert all(place.startswith("FLM003 ../range/records.yaml:") for place in _places(check(folder, ON)))
    assert _places(check(folder, ON))
    for here, shown in ((tmp_path, "range/records.yaml:"), (folder, "../range/records.yaml:"), (tmp_path.parent, "")):
        monkeypatch.chdir(here)
        assert main(["check", str(folder), "--on", ON.isoformat()]) == 1
        first = capsys.readouterr().out.splitlines()[0]
        assert first.startswith(shown or f"{tmp_path.name}/range/records.yaml:")


def test_a_record_nobody_uses_is_not_judged(tmp_path: Path) -> None:
    """Neither by the rules nor for its shape; where a job comes to use it, it is."""
    spare = {"id": "spare", "name": "Spare", "colour": "grey"}
    folder = two_folders(tmp_path, of_range={"products.spare": spare, "products.primer.film.max": "400 um"})
    told = {f.path.split(".")[1] for f in _errors(tmp_path / "range")}
    assert "spare" in told
    checked = check(folder, ON)
    assert "spare" not in spec_of(checked).products
    assert not [f for f in checked.report if "spare" in f.path]
    assert checked.report.not_judged == ()
    layer = {"id": "spare", "role": "primer", "product": "spare", "film": {"nominal": "40 um"}}
    own = two_folders(
        tmp_path / "used",
        of_range={"products.spare": spare},
        own={"systems": [{"id": "own", "title": "Own", "layers": [layer]}]},
    )
    assert {f.path.split(".")[1] for f in _errors(own) if f.place.file == "../range/records.yaml"} == {"spare"}


def test_an_id_of_the_range_is_offered_for_one_that_is_wrong(tmp_path: Path) -> None:
    folder = two_folders(tmp_path, own={"jobs.refit.system": "chasis"})
    lost = next(f for f in _errors(folder) if f.id == "MOD005")
    assert (lost.place.file, lost.remedy) == ("records.yaml", "did you mean chassis?")


@pytest.mark.parametrize("id", ["cab", "CAB"])
def test_an_id_in_both_folders_is_told_at_both(tmp_path: Path, id: str) -> None:
    layer = {"id": "a", "role": "primer", "product": "primer", "film": {"nominal": "60 um"}}
    folder = two_folders(tmp_path, own={"systems": [{"id": id, "title": "Own", "layers": [layer]}]})
    told = [one for one in check(folder, ON).report.told() if one.finding.id == "MOD006"]
    assert len(told) == 1
    both = [told[0].finding, *told[0].also]
    assert [(f.place.file, f.path) for f in both] == [
        ("../range/records.yaml", "systems.cab"),
        ("records.yaml", f"systems.{id}"),
    ]
    assert both[0].place.line > 1


def test_pictures_are_read_from_the_folder_of_who_names_them(tmp_path: Path) -> None:
    """The range's from the range alone, though one of that name lies here; the folder's not from the range."""
    step = {"file": "sketch.svg", "id": "s", "caption": "Sketch", "alternative_text": "A sketch."}
    folder = two_folders(tmp_path, of_range={"preparations.sand-steel.steps.sand.figures": [step]})
    (tmp_path / "range/sketch.svg").unlink()
    assert [(f.id, f.place.file) for f in _errors(folder) if "sand.figures" in f.path] == [
        ("MOD011", "../range/records.yaml")
    ]
    out = two_folders(
        tmp_path / "out",
        of_range={"preparations.sand-steel.steps.sand.figures": [step | {"file": "../yard/sketch.svg"}]},
    )
    assert [f.id for f in _errors(out) if f.path.endswith("figures.s.file")] == ["MOD003"]


def _no_project(place: Path) -> None:
    (place / "range/project.yaml").unlink()


def _broken_project(place: Path) -> None:
    _edit(place / "range/project.yaml", "title: ", "titel: ")


def _second_project(place: Path) -> None:
    (place / "range/more.yaml").write_text("project: {id: more}\n", "utf-8")


def _range_of_a_range(place: Path) -> None:
    _edit(place / "range/project.yaml", "title: ", "range: ../other\n  title: ")


def _missing(place: Path) -> None:
    (place / "range").rename(place / "elsewhere")


def _file(place: Path) -> None:
    _missing(place)
    (place / "range").write_text("project: {id: more}\n", "utf-8")


def _link(place: Path) -> None:
    _missing(place)
    (place / "range").symlink_to(place / "elsewhere")


def _link_on_the_way(place: Path) -> None:
    (place / "more").symlink_to(place)
    _edit(place / "yard/project.yaml", RANGE, "range: ../more/range")


def _to(way: str) -> Folders:
    return lambda place: _edit(place / "yard/project.yaml", RANGE, f"range: {way}")


def _moved_inside(place: Path) -> None:
    (place / "range").rename(place / "yard/range")
    _edit(place / "yard/project.yaml", RANGE, "range: range")


REFUSED: dict[str, tuple[Folders, str, str]] = {
    "no project": (_no_project, "RNG003", "the range has no project source"),
    "a project with a fault": (_broken_project, "RNG003", "at ../range/project.yaml:"),
    "two projects": (_second_project, "RNG003", "the range has 2 project sources"),
    "a range of a range": (_range_of_a_range, "RNG003", "the range stands on a range itself"),
    "missing": (_missing, "RNG001", "there is no such folder"),
    "a file": (_file, "RNG001", "the range ../range is a file"),
    "a link": (_link, "RNG001", "the range ../range is reached through a link"),
    "a link on the way": (_link_on_the_way, "RNG001", "the range ../more/range is reached through a link"),
    "itself": (_to("."), "RNG002", "is the folder of the project itself"),
    "itself by its name": (_to("../yard"), "RNG002", "is the folder of the project itself"),
    "inside, with all it holds": (_moved_inside, "RNG002", "the range range lies in the folder of the project"),
    "inside": (_to("parts/range"), "RNG002", "lies in the folder of the project"),
    "around": (_to(".."), "RNG002", "the folder of the project lies in the range"),
    "no way": (_to("/etc"), "MOD003", "is no way from this folder to another"),
    "a way of Windows": (_to(r"..\range"), "MOD003", "is no way from this folder to another"),
    "a list": (_to("[../range]"), "MOD003", "a list is given where one value is required"),
    "a group": (_to("{way: ../range}"), "MOD003", "where one value is required"),
    "no text": (_to("''"), "MOD003", "range: "),
    "no revision": (_to("git:../range"), "MOD003", "names no revision and folder"),
    "an option for a revision": (_to("git:--all:../range"), "MOD003", "names no revision and folder"),
    "no repository": (_to("git:v1:../range"), "RNG001", "cannot be read: git says"),
}


@pytest.mark.parametrize("name", REFUSED)
def test_a_range_that_cannot_be_used_is_one_finding(tmp_path: Path, name: str) -> None:
    """At the key that names it; nothing of it is read, and nothing is said to be missing that may stand in it."""
    spoil, id, what = REFUSED[name]
    folder = two_folders(tmp_path)
    spoil(tmp_path)
    checked = check(folder, ON)
    found = [f for f in checked.report if f.severity is Severity.ERROR]
    assert [(f.id, f.path, f.place.file) for f in found] == [(id, "project.range", "project.yaml")]
    assert what in found[0].what
    assert "range" in found[0].place.text
    assert checked.loaded.spec is None or not checked.loaded.spec.products
    assert checked.loaded.range is None


def test_a_file_of_the_range_that_cannot_be_read_is_told(tmp_path: Path) -> None:
    folder = two_folders(tmp_path)
    (tmp_path / "range/broken.yaml").write_text("products: [\n", "utf-8")
    assert {f.place.file for f in _errors(folder)} == {"../range/broken.yaml"}


def test_both_folders_are_bounded_together(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    folder = two_folders(tmp_path)
    monkeypatch.setattr(project, "FILES_LIMIT", 3)
    assert [f"{f.id} {f.place}" for f in _errors(folder) if f.id.startswith("SRC")] == [
        "SRC039 ../range/records.yaml:1:1"
    ]


def test_a_range_as_of_a_revision(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    folder = two_folders(tmp_path)
    kept_in_git(tmp_path, "v1")
    _edit(tmp_path / "range/records.yaml", "name: Example primer", "name: Other")
    git(tmp_path, "rm", "--quiet", "-r", "--cached", "range")
    (tmp_path / "range").rename(tmp_path / "gone")
    _edit(folder / "project.yaml", RANGE, "range: git:v1:../range")
    checked = check(folder, ON)
    assert _places(checked) == []
    assert spec_of(checked).products["primer"].name == "Example primer"
    assert checked.loaded.place(("products", "primer", "name")).file == "../range@v1/records.yaml"
    _edit(folder / "project.yaml", "range: git:v1:../range", "range: git:v2:../range")
    assert [(f.id, f.what) for f in _errors(folder)] == [
        ("RNG001", "the range git:v2:../range cannot be read: git knows no revision 'v2' here")
    ]
    _edit(folder / "project.yaml", "range: git:v2:../range", "range: git:v1:../none")
    assert "none is not in the revision v1" in _errors(folder)[0].what
    _edit(folder / "project.yaml", "range: git:v1:../none", "range: git:v1:../../../none")
    assert "leads out of the repository" in _errors(folder)[0].what


def test_a_record_may_be_based_on_one_of_the_range(tmp_path: Path) -> None:
    """What it carries over stands in the range, and so does what is wrong with it."""
    own = {
        "id": "yard-primer",
        "name": "Yard primer",
        "based_on": "primer",
        "including": ["hazards", "direct_to_metal", "variants"],
    }
    folder = two_folders(tmp_path, own={"products": [own]})
    checked = check(folder, ON)
    assert [f for f in _places(checked) if f.startswith("BAS")] == []
    made = spec_of(checked).products["yard-primer"]
    assert made.binder == spec_of(checked).products["primer"].binder
    assert checked.loaded.place(("products", "yard-primer", "binder")).file == "../range/records.yaml"
    assert checked.loaded.place(("products", "yard-primer", "name")).file == "records.yaml"


def test_what_the_project_leaves_to_the_range_stands_there(tmp_path: Path) -> None:
    checked = check(two_folders(tmp_path), ON)
    assert checked.loaded.place(("project", "maker", "name")).file == "../range/project.yaml"
    assert checked.loaded.place(("project", "customer", "name")).file == "project.yaml"


def test_safety_sets_of_the_range_come_with_the_products_that_name_them(tmp_path: Path) -> None:
    sets = [
        {"id": "eyes", "first_aid": [{"id": "eyes", "route": "eyes", "action": "Rinse."}]},
        {"id": "unused", "cautions": []},
    ]
    folder = two_folders(tmp_path, of_range={"safety_sets": sets, "products.primer.hazards.safety_sets": ["eyes"]})
    assert [f.what for f in _errors(folder)] == []
    hazards = spec_of(check(folder, ON)).products["primer"].hazards
    assert hazards is not None
    assert [one.action for one in hazards.first_aid] == ["Rinse."]
    _edit(tmp_path / "range" / "records.yaml", "Rinse.", "")
    (fault,) = (f for f in _errors(folder) if f.path.startswith("safety_sets"))
    assert fault.place.file == "../range/records.yaml"
