"""git as the reference: what it sees and what changes the specification is never missed; what only it sees is never told."""

from __future__ import annotations

import json
import random
import re
import subprocess
from collections.abc import Callable
from pathlib import Path
from typing import Any

from hypothesis import assume, given, settings
from hypothesis import strategies as st

from specgen.comparison.compare import Side, compare
from specgen.model.canonical import canonical
from specgen.model.parse import Loaded, parse
from specgen.source.project import Sources
from specgen.source.reader import read_text
from tests.good_spec import GOOD

FILES = {file.name: file.read_text("utf-8") for file in sorted(GOOD.glob("*.yaml"))}
# lists whose order says something, by their key
ORDERED = {"layers", "steps", "old_coats", "inspection"}


def _loaded(files: dict[str, str]) -> Loaded:
    read = [read_text(text.encode(), name) for name, text in files.items()]
    return parse(Sources(GOOD, tuple(source for source, _ in read), tuple(f for _, faults in read for f in faults)))


def _is_empty(old: Loaded, new: Loaded) -> bool:
    assert old.spec is not None
    assert new.spec is not None
    return compare(Side(old.spec, old.place), Side(new.spec, new.place)).is_empty


OLD = _loaded(FILES)


def _git_sees(old: str, new: str, folder: Path) -> bool:
    for name, text in (("old.yaml", old), ("new.yaml", new)):
        (folder / name).write_text(text, "utf-8")
    done = subprocess.run(["git", "diff", "--no-index", "--quiet", "old.yaml", "new.yaml"], cwd=folder, check=False)
    assert done.returncode in (0, 1)
    return done.returncode == 1


def _bare(value: Any, key: str = "") -> Any:
    """The canonical form without what is free: blanks in texts, and the order of lists that have none."""
    if isinstance(value, dict):
        return {name: _bare(held, name) for name, held in value.items()}
    if isinstance(value, list):
        held = [_bare(entry) for entry in value]
        return held if key in ORDERED else sorted(held, key=lambda entry: json.dumps(entry, sort_keys=True))
    return " ".join(value.split())


def _meaning(loaded: Loaded) -> Any:
    assert loaded.spec is not None
    return _bare(json.loads(canonical(loaded.spec)))


_NUMBERS = re.compile(r"(?<![\w.#-])\d+(?:\.\d+)?(?![\w.:-])")
_WORDS = re.compile(r"(?<=[ {,\[])(?:yes|no|any|um|Danger|primer|P180|white|small|h|degC)(?=[ ,}\].])")
_ENTRIES = re.compile(r"\n +- \{id: [^\n]*|, [a-z_]+: [^,{}\[\]\n]+(?=[,}])|\n +[a-z_]+: [^\n{\[]+(?=\n)")


def _number(text: str, pick: random.Random) -> str:
    spot = pick.choice(list(_NUMBERS.finditer(text)))
    new = pick.choice([str(int(float(spot[0])) + 1), spot[0] + ".5", "0", "9"])
    return text[: spot.start()] + new + text[spot.end() :]


def _word(text: str, pick: random.Random) -> str:
    spot = pick.choice(list(_WORDS.finditer(text)))
    return (
        text[: spot.start()]
        + pick.choice(["yes", "no", "mil", "h", "min", "Warning", "surfacer", "dull"])
        + text[spot.end() :]
    )


def _drop(text: str, pick: random.Random) -> str:
    spot = pick.choice(list(_ENTRIES.finditer(text)))
    return text[: spot.start()] + text[spot.end() :]


EDITS: list[Callable[[str, random.Random], str]] = [_number, _word, _drop]


@settings(max_examples=80, deadline=None)
@given(st.integers(0, 2**32), st.sampled_from(sorted(FILES)), st.integers(1, 3))
def test_a_change_of_meaning_is_never_missed(seed: int, name: str, times: int) -> None:
    pick = random.Random(seed)
    text = FILES[name]
    for _ in range(times):
        text = pick.choice(EDITS)(text, pick) if name != "project.yaml" else _number(text, pick)
    new = _loaded({**FILES, name: text})
    # a record with errors is named as not compared, which is tested with the command
    assume(new.spec is not None and not new.findings)
    changed = _meaning(OLD) != _meaning(new)
    assert _is_empty(OLD, new) is not changed
    assert _is_empty(new, OLD) is not changed


def test_what_git_sees_and_says_nothing_is_not_told(tmp_path: Path) -> None:
    seen = 0
    for seed in range(12):
        pick = random.Random(seed)
        name = pick.choice(sorted(FILES))
        text = FILES[name]
        for _ in range(4):
            text = pick.choice([_comment, _blank_line, _trailing_blank, _shuffle_statements])(text, pick)
        seen += _git_sees(FILES[name], text, tmp_path)
        new = _loaded({**FILES, name: text})
        assert not new.findings
        assert _is_empty(OLD, new), text
        assert _meaning(OLD) == _meaning(new)
    assert seen >= 10, "git has to see what is written here, or nothing is tested"


def _comment(text: str, pick: random.Random) -> str:
    lines = text.split("\n")
    lines.insert(pick.randrange(len(lines)), "# a remark")
    return "\n".join(lines)


def _blank_line(text: str, pick: random.Random) -> str:
    lines = text.split("\n")
    lines.insert(pick.randrange(len(lines)), "")
    return "\n".join(lines)


def _trailing_blank(text: str, pick: random.Random) -> str:
    lines = text.split("\n")
    at = pick.randrange(len(lines))
    lines[at] += "  " if lines[at].strip() else ""
    return "\n".join(lines)


def _shuffle_statements(text: str, pick: random.Random) -> str:
    """Another order of one list of codes, and of whole entries of a free list."""
    spots = list(re.finditer(r"(statements|precautions|pictograms|vehicles|roles): \[([^\]]+)\]", text))
    if not spots:
        return _comment(text, pick)
    spot = pick.choice(spots)
    words = spot[2].split(", ")
    pick.shuffle(words)
    return f"{text[: spot.start()]}{spot[1]}: [{', '.join(words)}]{text[spot.end() :]}"


def test_entries_may_change_places_and_files() -> None:
    products = FILES["products.yaml"].split("\n  - id: ")
    head, entries = products[0], products[1:]
    turned = "\n  - id: ".join([head, *(entry.rstrip("\n") for entry in reversed(entries))]) + "\n"
    half = len(entries) // 2
    first = "\n  - id: ".join([head, *(entry.rstrip("\n") for entry in entries[:half])]) + "\n"
    second = "\n  - id: ".join(["products:", *(entry.rstrip("\n") for entry in entries[half:])]) + "\n"
    for files in ({**FILES, "products.yaml": turned}, {**FILES, "products.yaml": first, "more.yaml": second}):
        new = _loaded(files)
        assert not new.findings
        assert _is_empty(OLD, new)
