"""The page of a rule: the docstring of its module, under fixed headings.

    FLM001 Title in one line

    Checks
        what it looks at
    Why
        what goes wrong otherwise
    Passes
        systems.cab.total: {min: 90 um, max: 120 um}
    Fails
        systems.cab.total: {min: 190 um}    # at systems.cab.total.min
        without jobs.refit.system
    To put right
        what to do

Passes and Fails hold examples parted by a blank line; each is a change to the good specification of the test suite, which runs them:
`path: value` sets, `without path` removes. `# at path` names where the finding falls, `# also ID at path` another one that comes with it; `# note at path` and `# warning at path` name
its weight as well, where it is milder than that of the rule.
`Given NAME`, as the first line of an example, changes another sound specification: a scenario of that name in the test suite.
"""

from __future__ import annotations

import inspect
import re
from functools import cache
from typing import NamedTuple

HEADINGS = ("Checks", "Why", "Passes", "Fails", "To put right")


class Example(NamedTuple):
    """Changes to a sound specification, and the findings they must give: (id, path, weight).

    The id is empty for the rule's own, the weight where none is named.

    `given` names the scenario that is changed; empty for the good specification.
    """

    given: str
    set: tuple[tuple[str, str], ...]
    removed: tuple[str, ...]
    findings: tuple[tuple[str, str, str], ...]


class Page(NamedTuple):
    """A page, its texts as single paragraphs."""

    id: str
    title: str
    checks: str
    why: str
    passes: str
    fails: str
    to_put_right: str

    def examples(self, *, failing: bool) -> tuple[Example, ...]:
        blocks = re.split(r"\n\s*\n", self.fails if failing else self.passes)
        return tuple(_example(block) for block in blocks if block.strip())


def id_of_page(docstring: str) -> str:
    """The id a page opens with. Raises ValueError where it does not open with one and a title."""
    return _opening(docstring)[0]


@cache
def read_page(docstring: str) -> Page:
    """Raises ValueError where a heading is missing or out of order."""
    id, title = _opening(docstring)
    parts = re.split(r"(?m)^(" + "|".join(HEADINGS) + r")$", inspect.cleandoc(docstring))
    if tuple(parts[1::2]) != HEADINGS:
        raise ValueError(f"{id}: the headings of a page are {', '.join(HEADINGS)}, in this order")
    checks, why, passes, fails, right = parts[2::2]
    return Page(id, title, _paragraph(checks), _paragraph(why), _lines(passes), _lines(fails), _paragraph(right))


def _opening(docstring: str) -> tuple[str, str]:
    heading = docstring.lstrip().partition("\n")[0]
    named = re.fullmatch(r"([A-Z]{3}[0-9]{3}) (.+)", heading)
    if named is None:
        raise ValueError(f"a rule page opens with its id and title, not with {heading!r}")
    return named[1], named[2]


def _paragraph(text: str) -> str:
    return " ".join(text.split())


def _lines(text: str) -> str:
    return inspect.cleandoc("\n" + text.strip("\n"))


def _example(block: str) -> Example:
    given = ""
    changes: list[tuple[str, str]] = []
    removed: list[str] = []
    findings: list[tuple[str, str, str]] = []
    for number, line in enumerate(block.strip().splitlines()):
        body, *remarks = (piece.strip() for piece in re.split(r"\s+# ", " " + line.strip()))
        for remark in remarks:
            said = re.fullmatch(r"(?:also ([A-Z]{3}[0-9]{3}) )?(?:(note|warning) )?at (\S+)", remark)
            if said is None:
                raise ValueError(f"a remark on a page reads '# at path' or '# also ID note at path', not {remark!r}")
            findings.append((said[1] or "", said[3], said[2] or ""))
        if body.startswith("Given "):
            if number or remarks:
                raise ValueError(f"{body!r} is a line of its own, the first of its example")
            given = body.removeprefix("Given ").strip()
        elif body.startswith("without "):
            removed.append(body.removeprefix("without ").strip())
        elif body:
            path, _, value = body.partition(": ")
            changes.append((path.strip(), value.strip()))
    return Example(given, tuple(changes), tuple(removed), tuple(findings))
