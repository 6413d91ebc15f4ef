"""Renews the stems of the tables by which sentences are read, the parts of words without which a text is not looked at, from the words of each row.

    .venv/bin/python tests/campaigns/practice_stems.py

Of all that the words of a row need, those are taken that the texts of the demo, of the sound folders and of the tests hold least often.
"""

from __future__ import annotations

import re
import sys
from functools import cache
from itertools import combinations
from pathlib import Path

ROOT = Path(__file__).resolve().parents[2]
sys.path.insert(0, str(ROOT))

from specgen.facts.job.practices import instructions, small_letters_of  # noqa: E402
from specgen.model.parse import load  # noqa: E402
from specgen.standards.tables import table  # noqa: E402
from tests.facts.test_practices import SOUND  # noqa: E402
from tests.needed_words import Needed, Way, implied, needed, ways  # noqa: E402

FOLDERS = [*(ROOT / "specs_demo").iterdir(), *(ROOT / "tests/sound").iterdir()]
TABLES = {"practices_in_words": "words", "safe_forms": "subject", "precautions": "words", "excuses": "words"}
"""The column of each that the stems are worked out from."""
SHORTEST, LONGEST, GROUPS = 3, 8, 3
Texts = tuple[str, ...]
Groups = tuple[tuple[str, ...], ...]


def main() -> None:
    stated = {text for folder in FOLDERS if folder.is_dir() for text in _texts(folder)}
    texts = tuple(sorted(text.lower() for text in stated | {*SOUND}))
    for name, words in TABLES.items():
        _renew(name, words, texts)


def _renew(name: str, words: str, texts: Texts) -> None:
    file = ROOT / "specgen/standards/tables" / f"{name}.yaml"
    lines = file.read_text("utf-8").splitlines(keepends=True)
    stems = {row["id"]: _stems(row[words], texts) for row in table(name).rows}
    for at, line in enumerate(lines):
        row = re.match(r"  - \{id: (\w+),", line)
        if row is not None and stems[row[1]]:
            lines[at] = re.sub(r'stems: "[^"]*"', f'stems: "{stems[row[1]]}"', line, count=1)
    file.write_text("".join(lines), "utf-8")


def _texts(folder: Path) -> list[str]:
    spec = load(folder).judged
    kinds = ("jobs", "preparations", "systems", "products")
    records = [record for kind in kinds for record in getattr(spec, kind).values()] if spec is not None else []
    return [text for record in records for _, text in instructions(record, spec)]


def _stems(words: str, texts: Texts) -> str:
    """The stems of each way that the words are written as; none where one way needs none."""
    found = [_groups(way, texts) for way in ways(small_letters_of(words))]
    return ";".join("&".join("|".join(group) for group in way) for way in _joined(found)) if all(found) else ""


def _joined(found: list[Groups]) -> list[Groups]:
    """Ways that differ in one group are one, which holds the stems of both there."""
    left = list(dict.fromkeys(found))
    for one, other in combinations(left, 2):
        apart = {*one} ^ {*other}
        if len(one) == len(other) and len(apart) == 2:
            both = tuple(sorted(set().union(*apart)))
            joined = tuple(both if group in apart else group for group in one)
            return _joined([joined, *(way for way in left if way not in (one, other))])
    return left


def _groups(way: Way, texts: Texts) -> Groups:
    """The groups, rarest first, each of which leaves fewer texts to read."""
    groups = {_group(one, texts) for one in needed(way, lambda one: -_count(_group(one, texts), texts))}
    groups = {group for group in groups if min(map(len, group)) > 1 and implied(way, group)}
    groups = {group for group in groups if min(map(len, group)) >= SHORTEST} or groups
    taken: list[tuple[str, ...]] = []
    while groups and len(taken) < GROUPS:
        best = min(groups, key=lambda group: (_count(group, texts), sum(map(len, group)), group))
        if taken and _count(best, texts) == len(texts):
            break
        taken.append(best)
        texts = tuple(text for text in texts if any(stem in text for stem in best))
        groups.discard(best)
    return tuple(taken)


@cache
def _group(one: Needed, texts: Texts) -> tuple[str, ...]:
    """The rarest part of each."""
    parts = {_part(text, texts) for text in one}
    return tuple(sorted(part for part in parts if not any(other != part and other in part for other in parts)))


@cache
def _part(text: str, texts: Texts) -> str:
    """Of the words of a text, cut short, the one in the fewest texts."""
    parts = [word[:LONGEST] for word in re.findall(r"[^ .,;'\"|&-]+", text)] or [""]
    return min(parts, key=lambda part: (len(part) < SHORTEST, _count((part,), texts), -len(part), part))


@cache
def _count(stems: tuple[str, ...], texts: Texts) -> int:
    return sum(any(stem in text for stem in stems) for text in texts)


if __name__ == "__main__":
    main()
