"""What a finding is called, by its id: the title of its rule, or of the fault of reading. Called where its own words are withheld."""

from __future__ import annotations

from collections.abc import Mapping
from functools import cache

from specgen.model.faults import SHAPE_FAULTS
from specgen.rules.declare import all_rules
from specgen.rules.waivers import FAULTS as WAIVER_FAULTS
from specgen.source.faults import FAULTS as SOURCE_FAULTS


@cache
def titles() -> Mapping[str, str]:
    """The titles of all rules and faults by their ids."""
    faults = (SOURCE_FAULTS, SHAPE_FAULTS, WAIVER_FAULTS)
    return {rule.id: rule.page.title for rule in all_rules()} | {
        key: fault.title for held in faults for key, fault in held.items()
    }
