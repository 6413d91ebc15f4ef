"""PRE026 Nothing takes the profile off again after blasting

Checks
    Preparations that blast bare metal, with no existing coating that stays: after the last blasting step that specifies a profile, no step grinds, brushes or sands. A step that specifies a profile of its own may follow, as power tools to SP 11, and so may one that says in words that the place is blasted again.
Why
    Grinding polishes the peaks away. At edges and welds, where the film is thinnest anyway, the primer then has the least key.
Passes
    Given second good
    preparations.blast.steps.grind: {id: grind, do: power-tool, text: Grind slivers and blast the places again.}

    Given second good
    preparations.blast.steps.tool: {id: tool, do: power-tool, text: Clean corners the nozzle misses., grade: SP 11, profile: 1..1.5 mil, profile_method: ISO 8503-5}
Fails
    Given second good
    preparations.blast.steps.grind: {id: grind, do: power-tool, text: Grind edges and welds.}    # at preparations.blast.steps.grind

    Given second good
    preparations.blast.steps.dull: {id: dull, do: sand, text: Sand the edges., abrasive: P120}    # at preparations.blast.steps.dull
To put right
    Grind and round edges before blasting; or blast the places again and say so in the step.
"""

import re

from specgen.facts.pairs.parts import BLASTING, prepared_with
from specgen.model.preparation import PreparationStep, StepKind
from specgen.rules.kit import PRACTICE, WARNING, Preparation, Problem, Problems, Spec, date, rule

_SMOOTHS = {StepKind.HAND_TOOL, StepKind.POWER_TOOL, StepKind.SAND}
_AGAIN = re.compile(r"blast", re.I)


@rule("PRE026", on=Preparation, severity=WARNING, source=PRACTICE)
def profile_kept(preparation: Preparation, spec: Spec, on: date) -> Problems:
    bare = any(part.is_bare_metal and not part.old_paint for part in prepared_with(preparation, spec))
    for step in _after_blasting(preparation.steps) if bare else ():
        if step.do in _SMOOTHS and step.profile is None and not _AGAIN.search(step.text):
            what = f"{step.id} ({step.do}) takes off the profile that was blasted before it, and nothing blasts the place again"
            yield Problem(("steps", step.id), what)


def _after_blasting(steps: tuple[PreparationStep, ...]) -> tuple[PreparationStep, ...]:
    """The steps after the last blasting; none where that asks for no profile, or nothing is blasted."""
    last = next((at for at in reversed(range(len(steps))) if steps[at].do in BLASTING), None)
    return steps[last + 1 :] if last is not None and steps[last].profile is not None else ()
