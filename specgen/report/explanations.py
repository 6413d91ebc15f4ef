"""The page behind an id: of a rule, of a fault of reading, of shape or of a waiver, or of a rule that did not finish.

Called by `specgen explain`. Every id that a finding can carry has a page here; a test collects them.
"""

from __future__ import annotations

import textwrap
from collections.abc import Iterable
from dataclasses import dataclass

from specgen.assessing.faults import READING_FAULTS
from specgen.findings import Severity
from specgen.model.faults import SHAPE_FAULTS
from specgen.report.as_text import WIDTH
from specgen.rules import most_findings, waivers
from specgen.rules.declare import Rule, all_rules
from specgen.rules.run import CRASH
from specgen.source.faults import FAULTS
from specgen.source.range_faults import RANGE_FAULTS
from specgen.standards.reads import remembered


@dataclass(frozen=True, slots=True)
class Explanation:
    """One page. `parts` are headings with their text; a text of several lines is printed as it stands."""

    id: str
    severity: Severity
    title: str
    parts: tuple[tuple[str, str], ...]

    def text(self) -> str:
        """The page as printed, ending with a line end."""
        blocks = [f"{self.id} {self.title}"]
        blocks += [f"{heading}\n{_indented(said)}" for heading, said in self.parts if said]
        return "\n\n".join(blocks) + "\n"


@remembered
def explanations() -> dict[str, Explanation]:
    """Every page by its id, in the order of the ids."""
    pages = [*map(_of_rule, all_rules()), *_of_faults(), _of_crash(), _of_too_many()]
    return {page.id: page for page in sorted(pages, key=lambda page: page.id)}


def _of_rule(rule: Rule) -> Explanation:
    page = rule.page
    parts = (
        ("Checks", page.checks),
        ("Why", page.why),
        ("Passes (changes to a sound specification; `Given` names another one)", _block(page.passes)),
        ("Fails (`# at` names the address of the finding)", _block(page.fails)),
        ("To put right", page.to_put_right),
        ("Severity", _weighed(rule.severity, rule.waivable) + _shut(rule)),
        ("Source", str(rule.source)),
    )
    return Explanation(rule.id, rule.severity, page.title, parts)


def _of_faults() -> Iterable[Explanation]:
    for fault in (*FAULTS.values(), *RANGE_FAULTS.values()):
        # the example is printed as a block even where it is one line, for its blanks count
        yield _plain(fault.id, fault.severity, fault.title, fault.why, _block(fault.example), fault.remedy)
    for shape in SHAPE_FAULTS.values():
        yield _plain(shape.id, shape.severity, shape.title, shape.why, "", shape.remedy)
    for reading in READING_FAULTS.values():
        yield _plain(reading.id, reading.severity, reading.title, reading.why, "", reading.remedy)
    for waiver in waivers.FAULTS.values():
        yield _plain(waiver.id, waiver.severity, waiver.title, waiver.why, "", waiver.remedy)


def _plain(id: str, severity: Severity, title: str, why: str, example: str, remedy: str) -> Explanation:
    parts = (("Why", why), ("Example", example), ("To put right", remedy), ("Severity", _weighed(severity, False)))
    return Explanation(id, severity, title, parts)


def _of_crash() -> Explanation:
    why = "A rule that did not finish has judged nothing, so the document cannot be issued on its word."
    remedy = "Report it with the source it happened on; it is a fault of the program, not of the source."
    return _plain(CRASH, Severity.ERROR, "A rule did not finish", why, "", remedy)


def _of_too_many() -> Explanation:
    weight = "that of the severest finding left out"
    parts = (("Why", most_findings.WHY), ("To put right", most_findings.REMEDY), ("Severity", weight))
    return Explanation(most_findings.TOO_MANY, Severity.ERROR, "More findings than can be listed", parts)


def _weighed(severity: Severity, waivable: bool) -> str:
    if severity is Severity.ERROR:
        return "error: the document must not be issued, and nobody can waive it"
    if severity is Severity.NOTE:
        return "note: for information"
    return "warning: it may be issued, " + ("with a recorded waiver" if waivable else "but no waiver sets it aside")


def _shut(rule: Rule) -> str:
    return ", not even where it warns" if rule.severity is Severity.ERROR and not rule.waivable else ""


def _block(text: str) -> str:
    """Marks a text that is printed line by line."""
    return "\n" + text


def _indented(text: str) -> str:
    if text.startswith("\n"):
        return textwrap.indent(text.strip("\n"), "    ")
    return textwrap.fill(text, WIDTH, initial_indent="    ", subsequent_indent="    ", break_on_hyphens=False)
