"""What is worn at each task: as stated for a product, and by usual practice where nothing is.

Asked by every page that says what to wear. Which task a step of preparation is, is said here too.
"""

from __future__ import annotations

from collections.abc import Mapping

from specgen.facts.product.hazard_facts import isocyanates_in
from specgen.model.hazards import Protection, Task
from specgen.model.preparation import StepKind
from specgen.model.product import Product
from specgen.standards.tables import table

# The tasks of which no page is silent, with the rows of protective_equipment for breathing, hands and eyes; empty for none.
USUAL: Mapping[Task, tuple[str, str, str]] = {
    Task.PREPARATION: ("", "gloves_splash", ""),
    Task.SANDING: ("breath_sanding", "gloves_dust", "eyes_dust"),
    Task.SPRAYING: ("", "", ""),
    Task.CLEAN_UP: ("", "gloves_splash", ""),
}

TASK_OF_STEP: Mapping[StepKind, Task] = {
    StepKind.DEGREASE: Task.PREPARATION,
    # both make dust of metal and of old paint
    StepKind.DRILL: Task.SANDING,
    StepKind.CUT: Task.SANDING,
    StepKind.STRIP: Task.PREPARATION,
    StepKind.JET: Task.PREPARATION,
    StepKind.BLAST: Task.SANDING,
    StepKind.SWEEP: Task.SANDING,
    StepKind.HAND_TOOL: Task.SANDING,
    StepKind.POWER_TOOL: Task.SANDING,
    StepKind.SAND: Task.SANDING,
    StepKind.FEATHER: Task.SANDING,
}


def worn(product: Product) -> tuple[Protection, ...]:
    """What is worn, as stated; what is worn at spraying stays on at clearing up where isocyanate is or may be in it.

    Spray and vapour are still in the air when guns and masking are cleared away (common practice, no source). A product
    that states something of clearing up, or of every task, is taken at its word.
    """
    stated = product.hazards.protection if product.hazards is not None else ()
    if isocyanates_in(product) is False or any(entry.task in {Task.CLEAN_UP, Task.ANY} for entry in stated):
        return stated
    spraying = (entry for entry in stated if entry.task is Task.SPRAYING)
    return (*stated, *(entry.model_copy(update={"task": Task.CLEAN_UP}) for entry in spraying))


def worn_at(product: Product, task: Task) -> tuple[Protection, ...]:
    """What is worn at a task, that of every task included; empty where nothing is stated."""
    return tuple(entry for entry in worn(product) if entry.task in {task, Task.ANY})


def usual_needs(task: Task) -> tuple[str, str, str]:
    """Breathing, hands and eyes by usual practice, in the words of the table protective_equipment; empty where there is none."""
    breath, hands, eyes = USUAL.get(task, ("", "", ""))
    return _need(breath), _need(hands), _need(eyes)


def _need(id: str) -> str:
    return table("protective_equipment").row("id", id)["need"] if id else ""
