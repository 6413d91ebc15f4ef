"""What a finding is called, by its id: the title of its rule, or of the fault of reading. Called where its own words are withheld."""

from __future__ import annotations

from specgen.model.faults import SHAPE_FAULTS
from specgen.rules.declare import rule_named
from specgen.rules.waivers import FAULTS as WAIVER_FAULTS
from specgen.source.faults import FAULTS as SOURCE_FAULTS


def title_of(id: str) -> str:
    """The title of a rule or fault, by its id; empty of any other."""
    for faults in (SOURCE_FAULTS, SHAPE_FAULTS, WAIVER_FAULTS):
        if id in faults:
            return faults[id].title
    rule = rule_named(id)
    return "" if rule is None else rule.page.title
