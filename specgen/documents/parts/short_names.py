"""Short names of products, for column heads and cells of merged tables. Called by `merged_safety`, `room_air`, the hazard card and the
claims of a data sheet."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import takewhile


def short_names(names: Sequence[str]) -> dict[str, str]:
    """`Fennholt 210 epoxy primer` is `210` beside `Fennholt 410 topcoat`: without the words that names with one beginning share, and
    by its number where no other has it. One alone keeps its name, as a cleaner does beside the paints of a range.
    """
    alike: dict[str, list[str]] = {}
    for name in dict.fromkeys(names):
        alike.setdefault(name.partition(" ")[0], []).append(name)
    shown = {name: short for family in alike.values() for name, short in _family(family).items()}
    return shown if len(set(shown.values())) == len(shown) else {name: name for name in shown}


def without_maker(names: Sequence[str], maker: str) -> dict[str, str]:
    """`Fennholt 210 epoxy primer` of Fennholt Surface Works is `210 epoxy primer`; a name without the maker's stays whole."""
    found = {name: " ".join(name.split()[_shared([name, maker]) :]) for name in names}
    return {name: rest or name for name, rest in found.items()}


def apart(names: Sequence[str]) -> str:
    """The names in a line, told apart where one holds a comma itself: `thinner 90, 1 L can; degreaser`."""
    return ("; " if any("," in name for name in names) else ", ").join(names)


def _family(each: Sequence[str]) -> dict[str, str]:
    if len(each) < 2:
        return {name: name for name in each}
    split = [name.split() for name in each]
    common = _shared(each)
    if any(len(words) <= common for words in split):
        return {name: name for name in each}
    rest = [words[common:] for words in split]
    heads = [words[0] for words in rest]
    # one without a number, as a thinner has its own behind its name, takes the numbers of the others from nobody
    shown = [
        words[0] if heads.count(words[0]) == 1 and any(sign.isdigit() for sign in words[0]) else " ".join(words)
        for words in rest
    ]
    return dict(zip(each, shown, strict=True))


def _shared(each: Sequence[str]) -> int:
    """With how many of the same words the names begin."""
    split = [name.split() for name in each]
    return len(list(takewhile(lambda words: len(set(words)) == 1, zip(*split, strict=False))))
