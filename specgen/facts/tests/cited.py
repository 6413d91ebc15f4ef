"""Every standard that a record cites in words, with the place: one answer for the rules on editions and on successors.

Left out is what is said of the past (`was ISO 7253`), the title block with its history, and what a part brings along.
"""

from __future__ import annotations

import re
from collections.abc import Iterator

from specgen.facts.memo import gathered
from specgen.facts.tests.standards import Named, standards_in
from specgen.facts.texts import Text, texts
from specgen.model.node import Node
from specgen.model.spec import Spec
from specgen.model.test_report import LabReport
from specgen.model.walk import Path

_NAMES_A_STANDARD = re.compile(r"ISO|ASTM|SAE|SSPC|NACE|AMPP|DIN|VDA|FED|GM|SIS|BS|C5-|\b[B-G]\d{2,4}\b")
_OF_THE_PAST = re.compile(
    r"\b(?:was|were|former\w*|replac\w+|withdrawn|instead of|superse\w+|earlier|until|once|old|not)\b[^.;]{0,25}$",
    re.IGNORECASE,
)
_PAST_AFTER = re.compile(
    r"^[)\s,]{0,3}(?:is |was |has been |now )?(?:replaced|withdrawn|superseded|no longer)", re.IGNORECASE
)
_LEFT_OUT = frozenset({"document", "old_coats"})


def cited(spec: Spec, record: Node) -> Iterator[tuple[Path, Named]]:
    """Each standard a record names as one that holds, in the order of the sources; what a test report was made by is a fact."""
    if isinstance(record, LabReport):
        return
    editions = {path[:-1]: text for path, text, _ in texts(spec, record) if path[-1] == "edition"}
    for where, text, _ in _naming_one(record, spec):
        path = where[:-1] if where[-1].startswith("[") else where
        for named in standards_in(text):
            before, after = text[: named.start], text[named.end :]
            if not _OF_THE_PAST.search(before) and not _PAST_AFTER.match(after):
                apart = editions.get(path[:-1], "") if path[-1] == "standard" else ""
                yield path, named._replace(edition=named.edition or apart, written=_with(named, apart))


@gathered
def _naming_one(record: Node, spec: Spec) -> Iterator[Text]:
    for where, text, said in texts(spec, record):
        if not said.administrative and _LEFT_OUT.isdisjoint(where) and _NAMES_A_STANDARD.search(text):
            yield where, text, said


def _with(named: Named, edition: str) -> str:
    """The standard as written, with an edition that is stated apart from it."""
    return named.written if named.edition or not edition else f"{named.written}:{edition}"
