"""What a preparation or a system is put on: its parts with their material, and what the tables ask of that material.

Called by the rules of this folder, of `substrates` and of `fillers`.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from typing import NamedTuple

from specgen.facts.memo import gathered
from specgen.facts.placing import Placed, items_painted_with, items_prepared_with
from specgen.model.job import Item, Job, OldCoat
from specgen.model.preparation import Preparation, PreparationStep, StepKind, Substrate
from specgen.model.spec import Spec
from specgen.model.system import System
from specgen.standards.citations import Citation
from specgen.standards.reads import remembered
from specgen.standards.tables import Row, cell_citation, table

# Steps that cut, blast or brush the surface; a stripper or a wash does not.
WORKING = {
    StepKind.BLAST,
    StepKind.SWEEP,
    StepKind.HAND_TOOL,
    StepKind.POWER_TOOL,
    StepKind.SAND,
    StepKind.FEATHER,
}
BLASTING = {StepKind.BLAST, StepKind.SWEEP}

_TAKES_ALL_OFF = {StepKind.STRIP, StepKind.BLAST}
_JETTED_BARE = {"WJ-1", "WJ-2"}

# The table of substrates speaks of steel sheet; hot-rolled steel is the same metal with its scale.
_ASKED_AS = {"steel_hot_rolled": "steel_cold_rolled"}


class Part(NamedTuple):
    """One item of a job with everything that is said about it."""

    job: Job
    item: Item
    substrate: Substrate
    preparation: Preparation
    system: System

    @property
    def material(self) -> str:
        return self.substrate.material

    @property
    def kind(self) -> str:
        """metal, plastic, wood or paint."""
        return table("materials").row("id", self.material)["kind"]

    @property
    def name(self) -> str:
        """The material in words."""
        return table("materials").row("id", self.material)["name"]

    @property
    def old_paint(self) -> tuple[OldCoat, ...]:
        """The old coats that stay, from the part up; none where the preparation takes them off all over."""
        old = self.item.old_coats
        return () if not old or takes_old_paint_off(self.preparation) else old

    @property
    def is_repair(self) -> bool:
        """True where a spot is mended in a coat that stays: its rings are stated, or its edges are feathered.

        Such a part has two grounds, the bare spot and the coat around it, and every rule is asked of both.
        """
        return bool(self.old_paint) and (self.item.repair is not None or feathers(self.preparation))

    @property
    def masks(self) -> bool:
        """True where a step masks what is not to be coated."""
        return any(step.do is StepKind.MASK for step in self.preparation.steps)

    @property
    def is_bare(self) -> bool:
        """True where paint meets the part itself: no old coat stays, or a spot in one is worked down to it."""
        return not self.old_paint or reaches_the_part(self.item, self.preparation)

    @property
    def is_bare_metal(self) -> bool:
        """True where paint meets metal."""
        return self.kind == "metal" and self.is_bare

    @property
    def is_bare_steel(self) -> bool:
        return self.is_bare_metal and self.material in members("bare_steel")

    @property
    def lays_steel_bare(self) -> bool:
        """True where a grade has to be reached on steel: bare steel, steel under existing coats that are not sound, and a spot in old
        paint that is worked down to a grade of carbon steel, whatever the part is said to be."""
        under = self.kind == "metal" and self.material in members("bare_steel") and bool(self.old_paint)
        spot = self.kind == "paint" and self.is_repair and self.is_bare and is_worked_to_steel(self.preparation)
        return self.is_bare_steel or spot or (under and any(coat.sound is False for coat in self.old_paint))

    @property
    def is_zinc(self) -> bool:
        return self.material in members("galvanized")

    def asks(self, column: str) -> tuple[str, Citation] | None:
        """What the table of substrates says of this material in a column, and on whose word; None where nothing."""
        material = _ASKED_AS.get(self.material, self.material)
        if not any(row["material"] == material for row in table("substrates").rows):
            return None
        cell = table("substrates").row("material", material)[column]
        return (cell, cell_citation("substrates", material, column)) if cell else None


@gathered
def parts_of(job: Job, spec: Spec) -> Iterator[Part]:
    """The items of a job that are complete; another rule asks for what is missing in the others."""
    return _complete(spec, ((job, item) for item in job.items))


@gathered
def prepared_with(preparation: Preparation, spec: Spec) -> Iterator[Part]:
    """The parts that get this preparation. What a rule says of two parts alike is reported once."""
    return _complete(spec, items_prepared_with(preparation, spec))


@gathered
def painted_with(system: System, spec: Spec) -> Iterator[Part]:
    """The parts that get this system."""
    return _complete(spec, items_painted_with(system, spec))


def _complete(spec: Spec, placed: Iterable[Placed]) -> Iterator[Part]:
    for job, item in placed:
        substrate = spec.substrate_of(job, item)
        preparation, system = spec.preparation_of(job, item), spec.system_of(job, item)
        if substrate is not None and preparation is not None and system is not None and system.layers:
            yield Part(job, item, substrate, preparation, system)


def takes_old_paint_off(preparation: Preparation) -> bool:
    """True where old paint goes all over: stripped, blasted or jetted, unless an edge is feathered: then it stays around the spot."""
    # water jetting to the two cleanest of its grades leaves stains at most
    return not feathers(preparation) and any(
        step.do in _TAKES_ALL_OFF or (step.do is StepKind.JET and step.grade in _JETTED_BARE)
        for step in preparation.steps
    )


def reaches_the_part(item: Item, preparation: Preparation | None) -> bool:
    """True where a spot in old paint is taken down to the part: rings are stated, or edges feathered and a grade asked."""
    if item.repair is not None:
        return True
    return preparation is not None and feathers(preparation) and any(step.grade for step in preparation.steps)


def is_worked_to_steel(preparation: Preparation) -> bool:
    """True where tools or a blast, but no sweep, are to reach a grade that is defined on carbon steel, as the ladder of grades is."""
    on_steel = {row["grade"] for row in table("preparation_ladder").rows}
    return any(step.do in WORKING - {StepKind.SWEEP} and step.grade in on_steel for step in preparation.steps)


def feathers(preparation: Preparation) -> bool:
    """True where an edge of old paint is feathered, which is done around a spot."""
    return any(step.do is StepKind.FEATHER for step in preparation.steps)


@remembered
def members(group: str) -> frozenset[str]:
    """The materials or families a name of the overcoating tables stands for."""
    return frozenset(row["member"] for row in table("overcoat_groups").rows if row["id"] == group)


@remembered
def grade_notes(says: str) -> dict[str, Row]:
    """The grades of which the table of grade notes says this, each with its row."""
    return {row["grade"]: row for row in table("preparation_grade_notes").rows if row["says"] == says}


def is_jetting(step: PreparationStep) -> bool:
    """True for water jetting, and for a wash or a stripping to one of its grades: it takes off rust and paint and makes no profile."""
    return step.do is StepKind.JET or (step.grade is not None and step.grade.startswith("WJ"))


def medium_name(step: PreparationStep) -> str:
    return table("preparation_media").row("id", step.medium)["name"] if step.medium else ""


def leaves_acid(preparation: Preparation) -> bool | None:
    """True where a converter's acid stays on the part, None where a conversion does not say."""
    conversions = [step for step in preparation.steps if step.do is StepKind.CONVERT and not is_treatment(step)]
    said = [step.unrinsed_acid for step in preparation.steps if step.unrinsed_acid is not None]
    if any(said):
        return True
    return None if any(step.unrinsed_acid is None for step in conversions) else False


def is_treatment(step: PreparationStep) -> bool:
    """True for flame or plasma, which change a surface without acid."""
    return step.medium is not None and table("preparation_media").row("id", step.medium)["kind"] == "treatment"
