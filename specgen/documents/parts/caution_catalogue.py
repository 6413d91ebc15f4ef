"""Every caution in our own words, in one place, marked for translation. Called by the views on hazards.

The official wording of H, EUH and P statements is not here: it stands in the published tables and is never translated
by us. What is here without a document beside it is common practice; the safety data sheet comes first.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import Literal

from specgen.facts.product.dangers import Danger, Trait
from specgen.model.application import Workplace
from specgen.model.hazards import Task
from specgen.units.locale import N_

Work = Literal["old-paint", "blasting"]
"""What is cautioned of the work and not of a product."""


@dataclass(frozen=True, slots=True, kw_only=True)
class StepCaution:
    """A caution at one task, said of the products that have the trait, at any or at such work. `{time}` is the clearance time.

    `at` are the texts of places where the usual one, that of a booth, would be wrong.
    """

    task: Task
    trait: Trait | Work | Literal["any"]
    text: str
    at: Mapping[Workplace, str] = field(default_factory=dict)


# In the order they are printed at a step: what kills or disables for life comes first.
AT_STEPS: tuple[StepCaution, ...] = (
    StepCaution(
        task=Task.PREPARATION,
        trait="any",
        text=N_(
            "Cleaners and degreasers are flammable and are absorbed through the skin: wear solvent-resistant "
            "gloves, ventilate, keep flames and sparks away, and put used cloths in a closed metal bin."
        ),
        at={
            Workplace.CONFINED: N_(
                "Cleaners and degreasers are flammable and are absorbed through the skin, and their vapour fills a "
                "confined space within minutes: use them only where the entry permit allows it, with solvent-resistant "
                "gloves, forced ventilation and no source of ignition; take used cloths out at once."
            ),
        },
    ),
    StepCaution(
        task=Task.SANDING,
        trait="old-paint",
        text=N_(
            "Existing coatings may contain lead or chromate: do not sand or dry-blast until they are known to be "
            "free of both; follow local regulations."
        ),
    ),
    StepCaution(
        task=Task.SANDING,
        trait="blasting",
        text=N_(
            "Blasting: wear an air-fed blast helmet, gloves, clothing that covers all skin, and hearing "
            "protection. Keep everyone else clear of abrasive and dust. Never use quartz (silica) sand."
        ),
    ),
    StepCaution(
        task=Task.SANDING,
        trait="isocyanate",
        text=N_(
            "The dust of a film that is not fully cured still contains isocyanate: do not dry-sand before the time its data "
            "sheet states, and then with dust extraction, a P3 mask and gloves; where none is stated, wet-sand once hard."
        ),
    ),
    StepCaution(
        task=Task.SANDING,
        trait="epoxy",
        text=N_(
            "Dust from epoxy that is not fully cured causes allergy: cover all skin; wash before eating or smoking."
        ),
    ),
    StepCaution(
        task=Task.SANDING,
        trait="any",
        text=N_(
            "Dust harms the lungs: sand with dust extraction and a particle filter mask; remove dust with a "
            "vacuum cleaner, never with compressed air."
        ),
    ),
    StepCaution(
        task=Task.MIXING,
        trait="two-pack",
        text=N_(
            "Put on gloves and goggles before opening the tins; mix in a ventilated place and clean up spills at once."
        ),
    ),
    StepCaution(
        task=Task.SPRAYING,
        trait="isocyanate",
        text=N_(
            "The spray contains isocyanate: wear air-fed breathing apparatus from the start of spraying until "
            "the booth has cleared; a filter mask does not protect. If no clearance time is posted, wait at least "
            "{time}, extraction running, and have it measured."
        ),
        at={
            Workplace.CONFINED: N_(
                "The spray contains isocyanate: wear air-fed breathing apparatus for as long as anybody is inside, "
                "also after spraying has stopped; a filter mask does not protect. No waiting time clears a confined "
                "space: whoever signs the entry permit decides, after the atmosphere inside has been tested."
            ),
            Workplace.OUTDOORS: N_(
                "The spray contains isocyanate: wear air-fed breathing apparatus from the start of spraying until mist "
                "and vapour have dispersed; a filter mask does not protect. Keep everyone else upwind and clear of the "
                "mist."
            ),
        },
    ),
    StepCaution(
        task=Task.SPRAYING,
        trait="burns",
        text=N_(
            "Start the extraction before spraying and run it until the booth has cleared; no flames, sparks, hot "
            "surfaces or smoking within reach of spray or vapour."
        ),
        at={
            Workplace.CONFINED: N_(
                "Ventilate the space before and during spraying and until no more vapour is measured inside, with fans "
                "and lights that cannot ignite it; no flames, sparks, hot surfaces or smoking inside or near an opening. "
                "Stop and leave when the atmosphere test or an alarm says so."
            ),
            Workplace.OUTDOORS: N_(
                "No flames, sparks, hot surfaces or smoking within reach of spray or vapour; vapour is heavier than air "
                "and collects in pits, drains and low places."
            ),
        },
    ),
    StepCaution(
        task=Task.SPRAYING,
        trait="absorbed",
        text=N_(
            "Absorbed through the skin: wear gloves that resist its solvents, change wetted gloves at once, and take "
            "off soaked clothing."
        ),
    ),
    StepCaution(
        task=Task.SPRAYING,
        trait="epoxy",
        text=N_("Uncured epoxy causes a lifelong allergy: cover all skin, and change contaminated gloves at once."),
    ),
    StepCaution(
        task=Task.CLEAN_UP,
        trait="oxidative",
        text=N_(
            "Soaked rags and overspray can self-heat and catch fire: spread them out to dry in the open air, or "
            "keep them under water in a closed metal bin until they are collected."
        ),
    ),
    StepCaution(
        task=Task.CLEAN_UP,
        trait="isocyanate",
        text=N_(
            "Keep air-fed breathing apparatus on until the booth has cleared; keep gloves and coverall on while "
            "cleaning up."
        ),
        at={
            Workplace.CONFINED: N_(
                "Keep air-fed breathing apparatus on for as long as you are inside the confined space, and gloves and "
                "coverall while cleaning up; clean equipment outside."
            ),
            Workplace.OUTDOORS: N_(
                "Keep air-fed breathing apparatus on until mist and vapour have dispersed, and gloves and coverall while "
                "cleaning up."
            ),
        },
    ),
    StepCaution(
        task=Task.CLEAN_UP,
        trait="single-use-filter",
        text=N_(
            "AX filters are for single use: discard them after the work and fit new ones for the next. Against a mixture of "
            "vapours use them only if the manufacturer of the filter states that they suit it, and no longer than stated."
        ),
    ),
    StepCaution(
        task=Task.CLEAN_UP,
        trait="aerosol",
        text=N_(
            "Cans burst when heated: keep out of the sun and away from heat; never pierce or burn a can, even "
            "when empty."
        ),
    ),
    StepCaution(
        task=Task.CLEAN_UP, trait="any", text=N_("Do not empty anything into drains or put it in household waste.")
    ),
)


THINNER = N_("thinner of the product")
SHEET_FIRST = N_("read its safety data sheet before opening it")

# One thing that hurts in a line of large type, said of what has a danger of `facts.product.dangers`.
HURTS: Mapping[Danger, str] = {
    "explodes": N_("May explode: no heat, impact or sparks."),
    "poison": N_("Toxic: keep away from mouth, skin, eyes and lungs."),
    "reacts": N_("Reacts violently or releases toxic gas with water or acids: keep both away."),
    "isocyanate": N_(
        "Spray mist can cause permanent asthma: wear air-fed breathing apparatus where isocyanate is in it."
    ),
    "organs": N_("May cause serious long-term harm{kinds}: do not breathe it; no skin contact."),
    "burns": N_("Fire hazard: no flames, sparks or smoking within reach of spray or vapour."),
    "bursts": N_("Pressurised, may burst: keep cool; never pierce or burn it, even when empty."),
    "corrodes": N_(
        "Causes severe burns to skin and eyes: cover skin and eyes; if splashed, rinse at once and keep rinsing."
    ),
    "airways": N_("Corrosive to the airways: do not breathe spray, vapour or dust; wear respiratory protection."),
    "blinds": N_("Risk of blindness: wear goggles. If in eyes, rinse at once and call a doctor."),
    "allergy": N_("Skin contact can cause a lifelong allergy: cover all skin."),
    "aspiration": N_(
        "Can be fatal if swallowed and it enters the airways: do not induce vomiting, call a doctor at once."
    ),
    "lungs": N_("Harmful if inhaled, may cause drowsiness: ventilate and wear respiratory protection at all times."),
    "absorbed": N_("Absorbed through the skin: wear gloves; take off soaked clothing and wash at once."),
    "eyes": N_("Irritates the eyes: wear close-fitting goggles."),
    "self-heating": N_("Soaked rags can self-heat and catch fire: keep them under water in a closed metal bin."),
    "irritates": N_("Irritates or dries the skin: wear gloves and cover the skin."),
    "swallowed": N_("Harmful if swallowed or through the skin: wear gloves; wash before eating or smoking."),
    "water": N_("Hazardous to the environment: keep out of drains, water and soil."),
    "ozone": N_("Harms the ozone layer: ask the manufacturer about recovery or recycling."),
    "metals": N_("May corrode metals: keep only in the original packaging and absorb spills at once."),
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
LABEL_FILLS_IN = N_("(to be completed on the label)")
FILLED_IN: Mapping[str, str] = {
    "P280": N_("(for which, see Personal protective equipment)"),
    "P501": N_("(for where, see Disposal)"),
}

# What to wear at a task for which no product states anything. The need comes from the published table.
USUAL_WEAR = N_("common practice; none stated for the product")
NOT_STATED = N_("Not stated: see section 8 of the safety data sheet")
# Of a chemical that harms who breathes it, for it has no mask of its own in the sources; the sheet by its number where there is one.
BREATH_OF_CHEMICAL = N_("mask not stated: before starting, look it up in section 8 of {sheet}")
ITS_SHEET = N_("its safety data sheet")
# What covers the body where a product harms the skin and states nothing (common practice, no source).
COVER_SKIN = N_("cover all skin (common practice)")

# Said on the hazard card, which is read alone (common practice; of the breathing air EN 12021, of filters EN 14387, both from memory).
BREATHING_AIR = N_(
    "Air-fed breathing apparatus: breathing air to EN 12021; check air flow and warning device before each use; wear the visor, or "
    "close-fitting goggles where it leaves the eyes free."
)
FIRE = N_(
    "Warn everyone, leave and call the fire service. Fight only a small fire, with foam, powder or carbon dioxide, never with a "
    "water jet; keep out of the smoke."
)
FIRE_CANS = N_("Cans in a fire burst and fly: keep away.")
SPILL = N_(
    "Keep ignition sources away, ventilate, wear what is worn while spraying, keep it out of drains, soak it up with an inert "
    "absorbent and dispose of it as hazardous waste."
)
SHEET_DECIDES = N_("Sections 5 and 6 of the safety data sheets take precedence.")

NO_FIRST_AID = N_("First aid is not stated: see section 4 of the safety data sheets, and call for help.")
NO_VOMITING = N_("Do not induce vomiting; call a doctor at once.")

EMERGENCY = N_("In an emergency, call")
LAW_NOT_STATED = N_(
    "The jurisdiction is not stated for this project; the limits shown are those of {law} and may not apply at the place "
    "of work."
)
LAW_OF_THE_PLACE = N_(
    "Exposure limits shown: {law}. Binding limits at the place of work take precedence where they are lower."
)
LAW_LENT = N_(
    "Where no exposure limit of {law} is on file, that of {lender} is shown; the law of {law} may be stricter and decides."
)
LAW_WITHOUT_LIMITS = N_(
    "No exposure limit of {law} is on file, so no air flow is shown for it: obtain the limits of the place of work."
)
AT_LEAST = N_("at least {flow} (not every component is known)")
HEALTH_SETS_THE_AIR = N_(
    "The air flow is set by the occupational exposure limits, never by the lower explosive limit alone."
)
NOT_JUDGED = N_("cannot be calculated: keep protective equipment on and measure the air")
NO_AIR_STATED = N_(
    "The job states no room volume and no fresh-air flow, so neither the ventilation required nor the "
    "re-entry time has been calculated. Keep respiratory protection on until the booth has cleared; "
    "if no clearance time is posted, wait at least {time}, extraction running, and have it measured."
)
NO_AIR_OUTDOORS = N_(
    "Outdoors no ventilation and no re-entry time is calculated. Keep respiratory protection on until mist and vapour have "
    "dispersed, and keep everyone else upwind."
)
DILUTION_IS_NO_CONTROL = N_(
    "Dilution ventilation is not a control measure for isocyanates: a spray booth and air-fed breathing "
    "apparatus are required at any air flow."
)
POSTED_TIME = N_(
    "not before the clearance time posted at the booth, extraction running; if none is posted, wait at least {time}, "
    "extraction running, and have it measured"
)
RE_ENTRY = N_("Re-entry without respiratory protection, after spraying has stopped: {posted}.")
RE_ENTRY_VAPOUR = N_("The vapour alone takes {time} to clear.")
DISPERSED = N_(
    "outdoors, not before mist and vapour have dispersed and the painted parts have stopped giving off vapour"
)
ENTRY_HELD = N_("Confined space: hold point. Nobody enters until the entry permit is signed.")
ENTRY_NOT_STATED = N_("not stated: no entry until it is")
NO_FLOW_FOR_ENTRY = N_(
    "No fresh-air flow and no re-entry time is calculated for a confined space: the atmosphere test inside it decides, "
    "before and during the work."
)
LUNGS_OVER_EXPLOSION = N_(
    "The exposure limits require up to about {times} times the air flow that the lower explosive limit requires "
    "({product})."
)
MIXED_ROOM = N_(
    "Calculated for well-mixed room air; in the spray cone, in pits and inside the part the "
    "concentration is far higher. Solvents are numbered; section 3 of the safety data sheet names them."
)

# What the statements of long-term harm name, by how their codes begin; H362 is of milk.
LONG_TERM: tuple[tuple[str, str], ...] = (
    ("H340", N_("genetic damage")),
    ("H341", N_("genetic damage is suspected")),
    ("H350", N_("cancer")),
    ("H351", N_("cancer is suspected")),
    ("H360", N_("harm to fertility or the unborn child")),
    ("H361", N_("harm to fertility or the unborn child is suspected")),
    ("H362", N_("harm to breast-fed children")),
    ("H37", N_("damage to organs")),
    ("EUH380 EUH381", N_("hormone disorders")),
    ("EUH201", N_("lead poisoning")),
    ("EUH207", N_("cadmium poisoning")),
)
