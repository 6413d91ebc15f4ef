"""The exposures behind a corrosivity category, and what of a test regime of ISO 12944-6 they lack.

One regime is condensation and neutral salt spray, the other cyclic ageing. How many hours of each is not judged: no source that could be
read confirms them. Called by the rule on categories.
"""

from __future__ import annotations

import re
from collections.abc import Iterable

from specgen.facts.tests.standards import methods_in
from specgen.model.spec import Spec
from specgen.model.system import Corrosivity
from specgen.model.test_report import LabReport

SALT_SPRAY, CONDENSATION, CYCLIC = "neutral salt spray", "condensation", "cyclic ageing"
_EXPOSURES = {
    "nss": SALT_SPRAY,
    "humidity_6270_1": CONDENSATION,
    "humidity_6270_2": CONDENSATION,
    "cyclic_12944": CYCLIC,
}
# as texts call what no word of the table of methods names; another cyclic test is given the benefit of the doubt
_WORDS = ((CONDENSATION, re.compile(r"\bcondens", re.IGNORECASE)), (CYCLIC, re.compile(r"\bcycl", re.IGNORECASE)))
# at C2 condensation alone is enough for most durabilities, from memory; the standard has no tests for C1, and CX is part 9
_BOTH = frozenset({Corrosivity.C3, Corrosivity.C4, Corrosivity.C5})
_CLAIMED = re.compile(r"\bISO 12944|\bC[2-5][ ,/(-]{1,3}(?:low|medium|high|very[ -]high|VH|[LMH])\b", re.IGNORECASE)


def claims_category(text: str) -> bool:
    """True where a text names a category with its durability or its standard, not as a place where something is used."""
    return _CLAIMED.search(text) is not None


def exposures_in(text: str, spec: Spec) -> set[str]:
    """The exposures a text names, and those of the reports whose number it names."""
    found = {_EXPOSURES[method] for method in methods_in(text) if method in _EXPOSURES}
    found |= {exposure for exposure, pattern in _WORDS if pattern.search(text)}
    named = (one for one in spec.reports.values() if re.search(rf"(?<![\w/-]){re.escape(one.number)}(?![\w/-])", text))
    return found.union(*(exposures_of(report) for report in named))


def exposures_of(report: LabReport) -> set[str]:
    """The exposures of the panels of a report."""
    methods = [method for done in report.tests for method in (done.method, done.after.method if done.after else "")]
    return {_EXPOSURES[method] for method in methods if method in _EXPOSURES}


def lacking_of_regime(category: Corrosivity, exposures: Iterable[str]) -> tuple[str, ...]:
    """What is missing of condensation and salt spray where there is no cyclic ageing; nothing for a category that is not judged."""
    found = set(exposures)
    if CYCLIC in found:
        return ()
    if category in _BOTH:
        return tuple(one for one in (CONDENSATION, SALT_SPRAY) if one not in found)
    return (CONDENSATION,) if category is Corrosivity.C2 and SALT_SPRAY in found and CONDENSATION not in found else ()
