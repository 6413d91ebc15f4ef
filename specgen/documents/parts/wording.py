"""Words for the closed lists of the model, and quantities as phrases, in the language of the document.

`N_` marks a word for translation where it stands; `Words` translates and formats when a view is built.
Called by every view.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, replace
from enum import StrEnum
from fractions import Fraction

from specgen.facts.layer.called import ROLES
from specgen.model.acceptance import AcceptanceRule, GaugePrinciple, LowReadings, SampledUnit, Stage, ZeroedOn
from specgen.model.application import Method, Workplace
from specgen.model.contract_document import Force
from specgen.model.control import ExtraSection, Section
from specgen.model.drying import DryingStage, Sanding
from specgen.model.environment import EnvironmentKind, Medium
from specgen.model.hazards import Route, SignalWord, Task
from specgen.model.job import Exposure, Hand, RubResult
from specgen.model.preparation import StepKind
from specgen.model.product import CuringKind, Losses, PackForm
from specgen.model.project import FilmConversion, PageSize, Project
from specgen.model.schedule import Weekday, Work
from specgen.model.system import Durability
from specgen.model.test_required import Attendance, Obligation, Tester
from specgen.trade.working import Working
from specgen.units.count import Count, show_count
from specgen.units.display import NOMINAL_FILM, show, show_range, unit_sign
from specgen.units.locale import N_, POINT, Locale, N_n
from specgen.units.quantity import CalendarSpan, Quantity, Range

_MONTHS, _YEARS = N_n("{} month", "{} months"), N_n("{} year", "{} years")

_SAID: tuple[tuple[StrEnum, str], ...] = (
    *ROLES.items(),
    (CuringKind.LIQUID_TWO_PACK, N_("liquid two-pack, mixed before use")),
    (CuringKind.CAPSULE_AEROSOL, N_("two-pack aerosol, hardener in a capsule, activated before use")),
    (CuringKind.BLOCKED_AEROSOL, N_("single-compartment aerosol, moisture-triggered (blocked hardener)")),
    (CuringKind.MOISTURE, N_("moisture-curing")),
    (CuringKind.OXIDATIVE, N_("oxidatively drying (air-drying)")),
    (CuringKind.PHYSICAL, N_("physically drying (solvent evaporation)")),
    (CuringKind.STOVED, N_("stoved")),
    (CuringKind.LIGHT, N_("light-curing (UV)")),
    (PackForm.AEROSOL, N_("can")),
    (PackForm.LIQUID, N_("tin")),
    (Method.BRUSH, N_("brush")),
    (Method.ROLLER, N_("roller")),
    (Method.AIR_SPRAY, N_("air spray")),
    (Method.AIRLESS, N_("airless spray")),
    (Method.HVLP, N_("HVLP spray")),
    (Method.ELECTROSTATIC, N_("electrostatic spray")),
    (Method.DIP, N_("dipping")),
    (Method.AEROSOL, N_("aerosol can")),
    (Method.TROWEL, N_("trowel")),
    (Losses.INCLUDED, N_("practical, spray losses included")),
    (Losses.EXCLUDED, N_("theoretical, spray losses not included")),
    (DryingStage.DUST_FREE, N_("dust-free")),
    (DryingStage.TOUCH_DRY, N_("touch-dry")),
    (DryingStage.HANDLING, N_("dry to handle")),
    (DryingStage.THROUGH, N_("through-dry")),
    (DryingStage.FULLY_CURED, N_("fully cured")),
    (Sanding.DRY, N_("ready for dry sanding")),
    (Sanding.WET, N_("ready for wet sanding")),
    (StepKind.DRILL, N_("Drill")),
    (StepKind.CUT, N_("Cut")),
    (StepKind.STEAM, N_("Steam-clean")),
    (StepKind.WASH, N_("Wash")),
    (StepKind.DEGREASE, N_("Degrease")),
    (StepKind.STRIP, N_("Strip existing coating")),
    (StepKind.BLAST, N_("Blast-clean")),
    (StepKind.SWEEP, N_("Sweep-blast")),
    (StepKind.JET, N_("Water-jet")),
    (StepKind.HAND_TOOL, N_("Hand-tool clean")),
    (StepKind.POWER_TOOL, N_("Power-tool clean")),
    (StepKind.SAND, N_("Sand")),
    (StepKind.FEATHER, N_("Feather edges")),
    (StepKind.MASK, N_("Masking")),
    (StepKind.SEAL, N_("Seal")),
    (StepKind.DUST_OFF, N_("Remove dust")),
    (StepKind.CONVERT, N_("Conversion treatment")),
    (StepKind.TEST, N_("Test")),
    (RubResult.SOLUBLE, N_("soluble")),
    (RubResult.SOFTENS, N_("softening")),
    (RubResult.RESISTANT, N_("resistant")),
    (Durability.LOW, N_("low")),
    (Durability.MEDIUM, N_("medium")),
    (Durability.HIGH, N_("high")),
    (Durability.VERY_HIGH, N_("very high")),
    (Hand.LEFT, N_("{} left")),
    (Hand.RIGHT, N_("{} right")),
    (Hand.BOTH, N_("{} left, {} right")),
    (Exposure.EXTERIOR, N_("outdoors")),
    (Exposure.INTERIOR, N_("indoors")),
    (Section.REPAIR, N_("repair")),
    (Section.DEFECTS, N_("coating defects and remedies")),
    (Section.MATERIALS, N_("materials to order")),
    (Section.DRAWINGS, N_("drawings of the coating systems")),
    (Section.COVERAGE, N_("coverage")),
    (Section.CLAIMS, N_("performance claims")),
    (ExtraSection.GENERIC_OVERCOATING, N_("published overcoating tables")),
    (Workplace.WORKSHOP, N_("workshop")),
    (Workplace.BOOTH, N_("spray booth")),
    (Workplace.OUTDOORS, N_("outdoors")),
    (Workplace.ON_SITE, N_("on site")),
    (Workplace.CONFINED, N_("confined space")),
    (EnvironmentKind.ATMOSPHERE, N_("atmosphere")),
    (EnvironmentKind.IMMERSION, N_("immersion")),
    (EnvironmentKind.SPLASH, N_("splash zone")),
    (EnvironmentKind.BURIED, N_("buried in soil")),
    (EnvironmentKind.UNDERSIDE, N_("underside")),
    (EnvironmentKind.CAVITY, N_("cavity")),
    (Medium.FRESH_WATER, N_("fresh water")),
    (Medium.SEA_WATER, N_("sea or brackish water")),
    (Medium.WASTE_WATER, N_("waste water")),
    (Medium.FUEL, N_("fuel")),
    (Work.PREPARATION, N_("preparation")),
    (Work.APPLICATION, N_("application")),
    (Work.SANDING, N_("sanding")),
    (Work.ASSEMBLY, N_("assembly")),
    (Weekday.MONDAY, N_("Monday")),
    (Weekday.TUESDAY, N_("Tuesday")),
    (Weekday.WEDNESDAY, N_("Wednesday")),
    (Weekday.THURSDAY, N_("Thursday")),
    (Weekday.FRIDAY, N_("Friday")),
    (Weekday.SATURDAY, N_("Saturday")),
    (Weekday.SUNDAY, N_("Sunday")),
    (Stage.RECEIPT, N_("on receipt")),
    (Stage.PREPARED, N_("after surface preparation")),
    (Stage.APPLICATION, N_("during application")),
    (Stage.COMPLETION, N_("on completion")),
    (AcceptanceRule.PA_2, N_("SSPC-PA 2")),
    (AcceptanceRule.ISO_19840, N_("ISO 19840")),
    (AcceptanceRule.NINETY_TEN, N_("90-10")),
    (AcceptanceRule.EIGHTY_TWENTY, N_("80-20")),
    (AcceptanceRule.OWN, N_("own rule")),
    (LowReadings.FEWER_THAN, N_("fewer than 20 % of the readings may be below the nominal DFT")),
    (LowReadings.AT_MOST, N_("at most 20 % of the readings may be below the nominal DFT")),
    (GaugePrinciple.MAGNETIC, N_("magnetic")),
    (GaugePrinciple.EDDY_CURRENT, N_("eddy current")),
    (GaugePrinciple.ULTRASONIC, N_("ultrasonic")),
    (GaugePrinciple.COMB, N_("wet film comb")),
    (GaugePrinciple.DESTRUCTIVE, N_("destructive, by a cut through the film")),
    (ZeroedOn.SMOOTH, N_("smooth steel")),
    (ZeroedOn.PROFILE, N_("the blast profile")),
    (SampledUnit.PART, N_("on each part")),
    (SampledUnit.COAT, N_("on each coat")),
    (SampledUnit.SHIFT, N_("each shift")),
    (SampledUnit.DAY, N_("each day")),
    (SampledUnit.BATCH, N_("on each batch")),
    (Tester.MAKER, N_("by the manufacturer")),
    (Tester.SUPPLIER, N_("by the supplier")),
    (Tester.APPLICATOR, N_("by the applicator")),
    (Tester.CUSTOMER, N_("by the customer")),
    (Tester.INDEPENDENT, N_("by an independent laboratory")),
    (Obligation.REQUIRED, N_("required")),
    (Obligation.ADVISED, N_("advised")),
    (Obligation.INFORMATION, N_("for information")),
    (Attendance.HOLD, N_("hold point of the customer")),
    (Attendance.WITNESS, N_("witnessed by the customer")),
    (Attendance.REVIEW, N_("record reviewed by the customer")),
    (Force.REQUIRED, N_("required")),
    (Force.ADVISED, N_("advised")),
    (Force.PERMITTED, N_("permitted")),
    (SignalWord.DANGER, N_("Danger")),
    (SignalWord.WARNING, N_("Warning")),
    (SignalWord.NONE, N_("No signal word")),
    (Task.PREPARATION, N_("Surface preparation")),
    (Task.SANDING, N_("Sanding")),
    (Task.MIXING, N_("Mixing")),
    (Task.SPRAYING, N_("Spraying")),
    (Task.CLEAN_UP, N_("Clean-up")),
    (Task.ANY, N_("All tasks")),
    (Route.INHALED, N_("If inhaled")),
    (Route.SKIN, N_("If on skin")),
    (Route.EYES, N_("If in eyes")),
    (Route.SWALLOWED, N_("If swallowed")),
)

# a value of one list may be spelt like one of another, and is another word
WORDS: Mapping[tuple[type[StrEnum], StrEnum], str] = {(type(value), value): text for value, text in _SAID}


# The kinds of which a project may choose a second unit, by the key it is chosen under.
_SECOND = {
    "film": "thickness",
    "temperature": "temperature",
    "area": "area",
    "length": "length",
    "volume": "volume",
    "voc": "voc_content",
    "density": "density",
}

# What a condition of a time is called where its unit alone does not say it.
_NAMED = {"humidity": N_("{} RH"), "thickness": N_("DFT {}"), "volume": N_("{} mixed")}


@dataclass(frozen=True, slots=True)
class Words:
    """Translation and formatting for one document: the language, and the second units of the project."""

    translate: Locale
    second: Mapping[str, str]

    @classmethod
    def of(cls, project: Project, translate: Locale) -> Words:
        second: dict[str, str] = {}
        if project.second_units is not None:
            for name, kind in _SECOND.items():
                chosen: StrEnum | None = getattr(project.second_units, name)
                if chosen is not None:
                    second[kind] = chosen.value
            if project.second_units.film_conversion is FilmConversion.NOMINAL:
                second[NOMINAL_FILM] = "yes"
        if project.page_size is PageSize.LETTER:
            # whoever prints on Letter reads degrees Fahrenheit
            second.setdefault("temperature", "degF")
        if "temperature" in second:
            second["temperature_difference"] = "K" if second["temperature"] == "degC" else "degF"
        return cls(translate, second)

    @property
    def in_brackets(self) -> bool:
        """True where films or temperatures, which every table of coats and climates has, are printed in a second unit too.

        A document then has to say what a figure in brackets is.
        """
        return not self.second.keys().isdisjoint(("thickness", "temperature"))

    @property
    def second_signs(self) -> tuple[str, ...]:
        """The units in brackets, as printed; a temperature of an author who writes in the other unit is in either."""
        signs = dict.fromkeys(unit_sign(unit) for kind, unit in self.second.items() if kind != NOMINAL_FILM)
        return tuple(signs) if "temperature" not in self.second else tuple(dict.fromkeys((*signs, unit_sign("degF"))))

    def __call__(self, text: str) -> str:
        return self.translate(text)

    def plural(self, one: str, many: str, number: int) -> str:
        """The form for a number, whose `{number}` is filled in. Both forms are whole sentences or phrases."""
        return self.translate.plural(one, many, number).format(number=number)

    def word(self, value: StrEnum) -> str:
        """The word for a value of a closed list."""
        return self.translate(WORDS[type(value), value])

    def phrase(self, value: Quantity | Range | Count | CalendarSpan | None) -> str:
        """A value with its unit, `at least 30 min`, `40 to 60 µm (1.6 to 2.4 mil)`; empty for none."""
        match value:
            case None:
                return ""
            case Quantity():
                return show(value, self.second, self.translate)
            case Range():
                return show_range(value, self.second, self.translate)
            case Count():
                return show_count(value, self.translate)
            case CalendarSpan():
                return self._span(value)

    def _span(self, value: CalendarSpan) -> str:
        """As its author counted, in months or in years."""
        number, unit = value.text.split()
        one, many = _YEARS if unit.startswith("year") else _MONTHS
        return self.translate.plural(one, many, int(number)).format(number)

    def figures(self, text: str) -> str:
        """A number or a formula of our own writing with the decimal sign of the language."""
        return self.translate.figures(text)

    def with_one_film(self) -> Words:
        """The same words with films in their author's unit alone, for the running text of a card."""
        return replace(self, second={kind: unit for kind, unit in self.second.items() if kind != "thickness"})

    def in_one_unit(self) -> Words:
        """The same words without any second unit, for what stands on the same paper with both."""
        return replace(self, second={})

    def for_a_sheet(self) -> Words:
        """The same words with plain figures, for what a spreadsheet adds up."""
        return replace(self, translate=replace(self.translate, decimal_sign=POINT))

    def worked(self, working: Working | None) -> str:
        """The result of a working with its unit, as its annex prints it; empty for none."""
        return working.printed(self.translate) if working is not None else ""

    def film(self, working: Working | None) -> str:
        """A film that was worked out, as its annex prints it, with the second unit beside it; empty for none."""
        if working is None:
            return ""
        # The second unit is that of the printed figure, so that the two can be checked against each other.
        figure = working.rounded
        return self.phrase(Quantity.of("thickness", Fraction(figure), working.unit, str(figure)))

    def at(self, time: Quantity | Range, *conditions: Quantity | Range | None) -> str:
        """`20 min at 20 °C, 50 % RH, DFT 60 µm`: a time with the conditions it holds for."""
        return self(N_("{time} at {conditions}")).format(
            time=self.phrase(time), conditions=self.conditions(*conditions)
        )

    def conditions(self, *stated: Quantity | Range | None) -> str:
        """`20 °C, 50 % RH, DFT 60 µm`: what a time holds for; empty where nothing is stated."""
        return ", ".join(self._named(condition) for condition in stated if condition is not None)

    def _named(self, value: Quantity | Range) -> str:
        """A condition that its unit alone does not name: `50 % RH`, `DFT 60 µm`, `5 L mixed`."""
        name = _NAMED.get(value.kind)
        return self(name).format(self.condition(value)) if name else self.condition(value)

    def condition(self, value: Quantity | Range) -> str:
        """What a figure holds for: `20 °C`, `15 to 25 °C`, `25 °C or above`, `5 °C or below`."""
        if isinstance(value, Range) and value.high is None:
            return self(N_("{} or above")).format(self.phrase(value.low))
        if isinstance(value, Range) and value.low is None:
            return self(N_("{} or below")).format(self.phrase(value.high))
        return self.phrase(value)

    def low(self, value: Range | None) -> str:
        """The lower limit of a range, empty where it has none."""
        return self.phrase(value.low) if value is not None else ""

    def high(self, value: Range | None) -> str:
        """The upper limit of a range, empty where it has none."""
        return self.phrase(value.high) if value is not None else ""
