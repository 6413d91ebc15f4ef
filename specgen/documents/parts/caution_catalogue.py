"""Every caution in our own words, in one place, marked for translation. Called by the views on hazards.

The official wording of H, EUH and P statements is not here: it stands in the published tables and is never translated
by us. What is here without a document beside it is common practice; the safety data sheet comes first.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Literal

from specgen.model.hazards import Task
from specgen.units.locale import N_

Trait = Literal["any", "aerosol", "burns", "isocyanate", "epoxy", "oxidative", "two-pack", "old-paint", "blasting"]


@dataclass(frozen=True, slots=True, kw_only=True)
class StepCaution:
    """A caution at one task, said of the products that have the trait. `{time}` is the clearance time."""

    task: Task
    trait: Trait
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


@dataclass(frozen=True, slots=True, kw_only=True)
class Hurt:
    """One thing that hurts, in a line of large type, and the statements it stands for."""

    id: str
    codes: tuple[str, ...]
    text: str


# The gravest first; a card takes the first six that hold for a product of the job. Every code that names a hurt is in one
# line; "self-heating" holds for what dries by oxidation, which has no statement of its own.
HURTS: tuple[Hurt, ...] = (
    Hurt(id="explodes", codes=("EUH044",), text=N_("Can explode: no heat, no blow, no spark.")),
    Hurt(
        id="poison",
        codes=("H300", "H301", "H310", "H311", "H330", "H331", "EUH029", "EUH031", "EUH032", "EUH070"),
        text=N_("Poison: nothing of it into the mouth, onto the skin or into the lungs."),
    ),
    Hurt(
        id="isocyanate",
        codes=("EUH204", "H334"),
        text=N_("Spray can bring asthma that stays for life: air-fed breathing protection where it holds isocyanate."),
    ),
    Hurt(
        id="organs",
        codes=(
            "H340",
            "H341",
            "H350",
            "H350i",
            "H351",
            "H360",
            "H360D",
            "H360F",
            "H360FD",
            "H360Df",
            "H360Fd",
            "H361",
            "H361d",
            "H361f",
            "H361fd",
            "H362",
            "H370",
            "H371",
            "H372",
            "H373",
            "EUH201",
            "EUH201A",
            "EUH203",
            "EUH207",
            "EUH380",
            "EUH381",
            "EUH430",
            "EUH431",
        ),
        text=N_("Can do lasting harm inside the body: do not breathe it, no skin contact."),
    ),
    Hurt(
        id="burns",
        codes=(
            "H220",
            "H221",
            "H222",
            "H223",
            "H224",
            "H225",
            "H226",
            "H227",
            "H228",
            "H230",
            "H231",
            "H232",
            "H282",
            "H283",
            "EUH014",
            "EUH018",
            "EUH019",
            "EUH209",
            "EUH209A",
        ),
        text=N_("Burns: no flame, no spark, no smoking within reach of spray and vapour."),
    ),
    Hurt(
        id="bursts",
        codes=("H229", "H280", "H281", "H284"),
        text=N_("Can bursts: keep it cool, never pierce or burn it, not even empty."),
    ),
    Hurt(
        id="corrodes", codes=("H314", "H290", "EUH071"), text=N_("Destroys skin and eyes: rinse at once and for long.")
    ),
    Hurt(id="blinds", codes=("H318",), text=N_("Can blind: goggles on; rinse at once and call a doctor.")),
    Hurt(
        id="allergy",
        codes=("H317", "EUH205", "EUH208"),
        text=N_("Skin contact can bring allergy that stays for life: no bare skin."),
    ),
    Hurt(
        id="lungs",
        codes=("H304", "H305", "H332", "H333", "H335", "H336", "EUH211", "EUH212"),
        text=N_("Harms when breathed, makes drowsy: air and breathing protection at all times."),
    ),
    Hurt(id="eyes", codes=("H319", "H320"), text=N_("Hurts the eyes: goggles or visor on.")),
    Hurt(
        id="self-heating",
        codes=(),
        text=N_("Soaked rags heat up and catch fire by themselves: keep them under water in a closed metal bin."),
    ),
    Hurt(
        id="skin",
        codes=("H302", "H303", "H312", "H313", "H315", "H316", "EUH066"),
        text=N_("Hurts skin and stomach: gloves on, wash before eating or smoking."),
    ),
    Hurt(
        id="water",
        codes=("H400", "H401", "H402", "H410", "H411", "H412", "H413", "H420", "EUH440", "EUH441", "EUH450", "EUH451"),
        text=N_("Poisons water: nothing into drains or soil."),
    ),
)

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
