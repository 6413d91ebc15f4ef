"""What is on an item before the work, whether the preparation disturbs it, and whether a step tests it first.

Called by the rule on lead and chromate.
"""

from __future__ import annotations

import re
from collections.abc import Iterator

from specgen.model.job import Item, Job, OldCoat
from specgen.model.preparation import Preparation, StepKind
from specgen.model.spec import Spec
from specgen.model.walk import Path

_MAKES_DUST = frozenset(
    {
        StepKind.DRILL,
        StepKind.CUT,
        StepKind.STRIP,
        StepKind.BLAST,
        StepKind.SWEEP,
        StepKind.JET,
        StepKind.HAND_TOOL,
        StepKind.POWER_TOOL,
        StepKind.SAND,
        StepKind.FEATHER,
    }
)


def old_coats_of(job: Job, item: Item, spec: Spec) -> Iterator[tuple[OldCoat, Path]]:
    """Every existing coat of an item, those that come off too, with its address; the paint it comes with where none is listed."""
    at: Path = ("jobs", job.id, "items", item.id)
    for coat in item.old_coats:
        yield coat, (*at, "old_coats", coat.id)
    substrate = spec.substrate_of(job, item)
    if not item.old_coats and substrate is not None and substrate.material == "old_paint":
        yield OldCoat.model_validate({"id": "old-paint"}), at


def disturbs(preparation: Preparation) -> bool:
    """True where a step makes dust or chips of what is on the part."""
    return any(step.do in _MAKES_DUST for step in preparation.steps)


def tested_before(preparation: Preparation, pattern: re.Pattern[str]) -> bool:
    """True where a test that names it stands before the first step that makes dust."""
    for step in preparation.steps:
        if step.do is StepKind.TEST and pattern.search(f"{step.text} {step.acceptance or ''}"):
            return True
        if step.do in _MAKES_DUST:
            return False
    return False
