"""A path leads to the right stretch of the right line, and a broken path to the deepest part that is there."""

from __future__ import annotations

import pytest

from specgen.findings import Place
from specgen.source import Places, read_text

TEXT = """\
# a remark
systems:
  cab:
    layers:
      - id: primer
        film: {min: 40 um}
      - dft: 60 um
        id: top
        empty:
      - name: third
      - plain
      - [x, y]
  none:
"""
PLACES = Places(read_text(TEXT.encode(), "s.yaml")[0])


def stretch(place: Place) -> str:
    """The line and the words the place points at."""
    return f"{place.line} {place.text[place.column - 1 : place.end_column - 1]}"


@pytest.mark.parametrize(
    ("path", "value", "key", "missing"),
    [
        ("systems", "2 systems", "2 systems", None),
        ("systems/cab", "3 cab", "3 cab", None),
        ("systems/cab/layers", "4 layers", "4 layers", None),
        ("systems/cab/layers/primer", "5 primer", "5 primer", None),
        ("systems/cab/layers/primer/film", "6 film", "6 film", None),
        ("systems/cab/layers/primer/film/min", "6 40 um", "6 min", None),
        ("systems/cab/layers/primer/film/max", "6 film", "6 film", "systems.cab.layers.primer.film.max"),
        ("systems/cab/layers/primer/cure/time", "5 primer", "5 primer", "systems.cab.layers.primer.cure"),
        ("systems/cab/layers/top", "8 top", "8 top", None),
        ("systems/cab/layers/top/dft", "7 60 um", "7 dft", None),
        ("systems/cab/layers/top/dft/min", "7 dft", "7 dft", "systems.cab.layers.top.dft.min"),
        ("systems/cab/layers/top/empty", "9 empty", "9 empty", None),
        ("systems/cab/layers/[1]/dft", "7 60 um", "7 dft", None),
        ("systems/cab/layers/[2]", "10 name", "10 name", None),
        ("systems/cab/layers/[2]/id", "10 name", "10 name", "systems.cab.layers.[2].id"),
        ("systems/cab/layers/[3]", "11 plain", "11 plain", None),
        ("systems/cab/layers/[4]/[1]", "12 y", "12 y", None),
        ("systems/cab/layers/[5]", "4 layers", "4 layers", "systems.cab.layers.[5]"),
        ("systems/cab/layers/other/film", "4 layers", "4 layers", "systems.cab.layers.other"),
        ("systems/none/layers", "13 none", "13 none", "systems.none.layers"),
        ("project", "2 systems", "2 systems", "project"),
    ],
)
def test_paths(path: str, value: str, key: str, missing: str | None) -> None:
    elements = tuple(path.split("/"))
    assert stretch(PLACES.place(elements)) == value
    assert stretch(PLACES.key_place(elements)) == key
    assert PLACES.missing(elements) == missing


def test_the_empty_path_is_the_file() -> None:
    assert stretch(PLACES.place(())) == "2 systems"
    assert PLACES.missing(()) is None


def test_a_file_without_a_tree_points_at_its_first_words() -> None:
    places = Places(read_text(b"\n  - list\n", "a.yaml")[0])
    assert stretch(places.place(("systems",))) == "2 - list"
    assert places.missing(("systems", "cab")) == "systems"
    assert str(Places(read_text(b"", "a.yaml")[0]).place(("x",))) == "a.yaml:1:1"


def test_of_two_entries_with_one_id_the_first_is_found() -> None:
    places = Places(read_text(b"a:\n  - id: x\n    b: 1\n  - id: x\n    b: 2\n", "a.yaml")[0])
    assert stretch(places.place(("a", "x", "b"))) == "3 1"


def test_a_long_list_is_searched_once() -> None:
    rows = "".join(f"  - id: e{number}\n    v: 1\n" for number in range(20_000))
    places = Places(read_text(f"a:\n{rows}".encode(), "a.yaml")[0])
    lines = [places.place(("a", f"e{number}", "v")).line for number in range(20_000)]
    assert lines == list(range(3, 40_003, 2))
