"""Every caution in our own words, in one place, marked for translation. Called by the views on hazards.

The official wording of H, EUH and P statements is not here: it stands in the published tables and is never translated
by us. What is here without a document beside it is common practice; the safety data sheet comes first.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Literal

from specgen.facts.product.dangers import Danger, Trait
from specgen.model.hazards import Task
from specgen.units.locale import N_

Work = Literal["old-paint", "blasting"]
"""What is cautioned of the work and not of a product."""


@dataclass(frozen=True, slots=True, kw_only=True)
class StepCaution:
    """A caution at one task, said of the products that have the trait, at any or at such work. `{time}` is the clearance time."""

    task: Task
    trait: Trait | Work | Literal["any"]
    text: str


# In the order they are printed at a step: what kills or disables for life comes first.
AT_STEPS: tuple[StepCaution, ...] = (
    StepCaution(
        task=Task.PREPARATION,
        trait="any",
        text=N_(
            "Cleaners and degreasers burn and go through skin: gloves that stand the solvent, moving "
            "air, no flame or spark near; soaked cloths into a closed metal bin."
        ),
    ),
    StepCaution(
        task=Task.SANDING,
        trait="old-paint",
        text=N_(
            "Old paint may hold lead or chromate: no sanding and no dry blasting before it is known "
            "that it does not; local rules decide."
        ),
    ),
    StepCaution(
        task=Task.SANDING,
        trait="blasting",
        text=N_(
            "Blasting: air-fed helmet, gloves, closed clothing and hearing protection; nobody else within reach of grain and "
            "dust, and never quartz sand."
        ),
    ),
    StepCaution(
        task=Task.SANDING,
        trait="isocyanate",
        text=N_(
            "Never sand a film dry that has not fully cured: its dust still holds isocyanate. Once hard it may be sanded wet, "
            "with P3 mask and gloves."
        ),
    ),
    StepCaution(
        task=Task.SANDING,
        trait="epoxy",
        text=N_(
            "Dust of epoxy that has not fully cured causes allergy: no bare skin, and wash before eating or smoking."
        ),
    ),
    StepCaution(
        task=Task.SANDING,
        trait="any",
        text=N_(
            "Dust harms the lungs: sand with extraction and a particle filter mask, and take dust up "
            "with a vacuum, never with compressed air."
        ),
    ),
    StepCaution(
        task=Task.MIXING,
        trait="two-pack",
        text=N_("Gloves and goggles before the tins are opened; mix where the air moves, and clear spills up at once."),
    ),
    StepCaution(
        task=Task.SPRAYING,
        trait="isocyanate",
        text=N_(
            "The spray holds isocyanate: air-fed breathing protection from the first stroke until the"
            " booth has cleared; a filter mask does not protect. Where the clearing time is not "
            "measured and posted, wait {time}."
        ),
    ),
    StepCaution(
        task=Task.SPRAYING,
        trait="burns",
        text=N_(
            "Extraction runs before the first stroke and until the booth has cleared; no flame, "
            "spark, hot surface or smoking within reach of spray and vapour."
        ),
    ),
    StepCaution(
        task=Task.SPRAYING,
        trait="epoxy",
        text=N_("Uncured epoxy causes allergy that stays for life: no bare skin, and change a wetted glove at once."),
    ),
    StepCaution(
        task=Task.CLEAN_UP,
        trait="oxidative",
        text=N_(
            "Soaked rags and overspray heat up by themselves and catch fire: spread them out to dry "
            "in the open, or keep them under water in a closed metal bin until they are collected."
        ),
    ),
    StepCaution(
        task=Task.CLEAN_UP,
        trait="isocyanate",
        text=N_("Stay on supplied air until the booth has cleared; gloves and overall stay on for the cleaning."),
    ),
    StepCaution(
        task=Task.CLEAN_UP,
        trait="aerosol",
        text=N_(
            "Cans burst when heated: out of the sun, away from heat; never pierce or burn one, not even an empty one."
        ),
    ),
    StepCaution(task=Task.CLEAN_UP, trait="any", text=N_("Nothing of this goes into drains or household waste.")),
)


# One thing that hurts in a line of large type, said of what has a danger of `facts.product.dangers`.
HURTS: Mapping[Danger, str] = {
    "explodes": N_("Can explode: no heat, no blow, no spark."),
    "poison": N_("Poison: nothing of it into the mouth, onto the skin or into the lungs."),
    "isocyanate": N_(
        "Spray can bring asthma that stays for life: air-fed breathing protection where it holds isocyanate."
    ),
    "organs": N_("Can do lasting harm inside the body: do not breathe it, no skin contact."),
    "burns": N_("Burns: no flame, no spark, no smoking within reach of spray and vapour."),
    "bursts": N_("Can bursts: keep it cool, never pierce or burn it, not even empty."),
    "corrodes": N_("Destroys skin and eyes: rinse at once and for long."),
    "blinds": N_("Can blind: goggles on; rinse at once and call a doctor."),
    "allergy": N_("Skin contact can bring allergy that stays for life: no bare skin."),
    "lungs": N_("Harms when breathed, makes drowsy: air and breathing protection at all times."),
    "eyes": N_("Hurts the eyes: goggles or visor on."),
    "self-heating": N_(
        "Soaked rags heat up and catch fire by themselves: keep them under water in a closed metal bin."
    ),
    "skin": N_("Hurts skin and stomach: gloves on, wash before eating or smoking."),
    "water": N_("Poisons water: nothing into drains or soil."),
}

PICTOGRAMS: Mapping[str, str] = {
    "GHS01": N_("Pictogram: exploding bomb"),
    "GHS02": N_("Pictogram: flame"),
    "GHS03": N_("Pictogram: flame over circle"),
    "GHS04": N_("Pictogram: gas cylinder"),
    "GHS05": N_("Pictogram: corrosion"),
    "GHS06": N_("Pictogram: skull and crossbones"),
    "GHS07": N_("Pictogram: exclamation mark"),
    "GHS08": N_("Pictogram: health hazard"),
    "GHS09": N_("Pictogram: environment"),
}

# How a statement is read whose official wording leaves something to the supplier.
LABEL_FILLS_IN = N_("(the label fills in the rest)")
FILLED_IN: Mapping[str, str] = {
    "P280": N_("(which of them: see What to wear)"),
    "P501": N_("(where to: see disposal)"),
}

# What to wear at a task for which no product states anything. The need comes from the published table.
USUAL_WEAR = N_("usual practice; nothing is stated")
NOT_STATED = N_("Not stated: go by section 8 of the safety data sheet")

EMERGENCY = N_("In an emergency call")
HEALTH_SETS_THE_AIR = N_("What may be breathed sets the air flow, never the explosive limit.")
NOT_JUDGED = N_("cannot be worked out: protection stays on, the air is measured")
NO_AIR_STATED = N_(
    "The job states no room and no fresh air, so neither the air needed nor the time until the room may be entered "
    "again is worked out. Breathing protection stays on until the booth has cleared; where its clearing time is not "
    "measured and posted, wait {time}."
)
DILUTION_IS_NO_CONTROL = N_(
    "Diluting the air is no control for isocyanate: booth and air-fed breathing protection are needed at any flow."
)
POSTED_TIME = N_("not before the clearance time posted at the booth; where none is, {time}")
LUNGS_OVER_EXPLOSION = N_("The lungs ask for {times} times the air that the explosive limit asks for.")
MIXED_ROOM = N_(
    "Reckoned for a room whose air mixes; at the spray cone, in pits and inside the part it is far worse. Solvents are "
    "numbered; section 3 of the safety data sheet names them."
)
