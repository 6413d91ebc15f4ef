"""Places of a folder whose trees were let go: the same as before, read again from the lines where that is sure to give the same."""

from __future__ import annotations

import shutil
from pathlib import Path
from random import Random

from specgen.model.parse import load
from specgen.model.spec import LIST_KINDS
from specgen.model.walk import leaves
from specgen.source.reader import read_text

DEMO = Path(__file__).parents[2] / "specs_demo"


def test_a_tree_that_was_let_go_gives_the_same_places() -> None:
    """Every value of the demo, its file folded or not, and more files than are read again at once."""
    loaded = load(DEMO)
    assert loaded.spec is not None
    paths = [path for path, _, _ in leaves(loaded.spec.project, ("project",))]
    for kind in LIST_KINDS:
        for key, record in getattr(loaded.spec, kind).items():
            paths += [path for path, _, _ in leaves(record, (kind, key))]
    paths += [("jobs", "tower-wagon-doors", "nothing"), ("systems", "nowhere")][:1]
    before = [(loaded.place(path), loaded.missing(path)) for path in paths]
    loaded.fold()
    assert all(places.source.root is None for places in loaded.places.values())
    shuffled = list(enumerate(paths))
    Random(7).shuffle(shuffled)
    for at, path in shuffled[:400]:
        assert (loaded.place(path), loaded.missing(path)) == before[at]


def test_what_was_not_sound_or_is_not_as_it_was_read_is_kept(tmp_path: Path) -> None:
    shutil.copytree(DEMO.parent / "tests/format_1/good", tmp_path / "old")
    loaded = load(tmp_path / "old")
    loaded.fold()
    layer = ("systems", "cab", "layers", "primer", "overcoat_interval")
    place = loaded.place(layer)
    assert place.text[place.column - 1 : place.end_column - 1] == "30 min..24 h"
    tabs, faults = read_text(b"products:\n\t- id: a\n", "tabs.yaml")
    assert faults
    assert not tabs.sound
