"""A unit is declared in one place: what an author may write has a printed sign, a meaning, and is offered wherever units are."""

from __future__ import annotations

import json
import re
from fractions import Fraction
from pathlib import Path

import pytest

import specgen.units
from specgen.model.project import FilmUnit, TemperatureUnit
from specgen.model.schema import schema
from specgen.model.spec import SINGULAR
from specgen.standards.tables import table
from specgen.units.display import show, unit_sign
from specgen.units.kinds import AMBIGUOUS, KINDS, SPELLINGS, UNITS
from specgen.units.known_units import scale
from specgen.units.quantity import Quantity, parse_quantity

UNITS_FILE = Path(specgen.units.__path__[0]) / "units.txt"
NAME = re.compile(r"[^\W\d]\w*")
# A sign that is no word and no letters of the unit file: digits set high or low, and the letters of micro and degree.
RAW = ("um", "deg", "2", "3", "*")
# What a working computes, a table states or a test result is in; no source has a leaf of these kinds alone.
NOT_WRITTEN = {
    "colour_difference", "colour_difference_2000", "colour_difference_ab", "colour_difference_cmc", "concentration", "conductivity", "cycles",
    "double_rubs", "holidays", "humidity_ratio", "impact", "krebs", "molar_volume", "radiant_exposure", "speed", "swings",
    "vapour_share", "viscosity",
}  # fmt: skip
ACCEPTED = sorted({(kind.name, unit) for kind in KINDS.values() for unit in kind.units})


@pytest.mark.parametrize(("kind", "unit"), ACCEPTED)
def test_what_an_author_may_write_is_declared_and_printed(kind: str, unit: str) -> None:
    assert unit in UNITS, f"the kind {kind} accepts {unit}, which has no line in UNITS"
    assert not [raw for raw in RAW if raw in UNITS[unit].sign], f"{unit} would be printed raw"
    assert show(parse_quantity(kind, f"1 {unit}")) == f"1\N{NO-BREAK SPACE}{UNITS[unit].sign}"


def test_every_declared_unit_is_used_or_counted_by_workings_alone() -> None:
    accepted = {unit for _, unit in ACCEPTED}
    told = [
        f"{unit} has a meaning in UNITS, but no kind of specgen/units/kinds.py accepts it: name it in its kinds"
        for unit, said in UNITS.items()
        if said.meaning and unit not in accepted
    ]
    told += [
        f"{unit} is accepted by a kind, but its line in UNITS has no meaning"
        for unit in accepted & set(UNITS)
        if not UNITS[unit].meaning
    ]
    assert not told, "\n".join(told)


def test_every_unit_defined_means_something_and_every_meaning_is_defined() -> None:
    """`units.txt` and `UNITS` are held against each other by their texts: a line in one alone would go unnoticed."""
    defined = _defined()
    meant = {name for said in UNITS.values() for name in NAME.findall(said.meaning)}
    needed = meant | {name for _, meaning in defined for name in NAME.findall(meaning)}
    told = [
        f"{', '.join(names)} is defined in specgen/units/units.txt, but no line in UNITS of kinds.py means it: add one"
        for names, _ in defined
        if not needed & set(names)
    ]
    told += [
        f"{name} stands as a meaning in UNITS, but specgen/units/units.txt does not define it: say there what it is"
        for name in sorted(meant - {name for names, _ in defined for name in names})
    ]
    assert not told, "\n".join(told)


def _defined() -> list[tuple[list[str], str]]:
    """Of each definition of `units.txt` its names, and what it is made of; an offset is no name."""
    lines = [line.partition("#")[0] for line in UNITS_FILE.read_text("utf-8").splitlines()]
    parts = [[part.strip() for part in line.split("=")] for line in lines if line.strip()]
    return [([name, *others], meaning.partition(";")[0]) for name, meaning, *others in parts]


def test_spellings_of_one_sign_mean_the_same() -> None:
    for unit, said in UNITS.items():
        alike = {other.meaning for other in UNITS.values() if (other.sign, other.many) == (said.sign, said.many)}
        assert alike == {said.meaning}, unit
        if said.meaning:
            assert scale(said.meaning, said.meaning) == (1, 0)


def test_every_spelling_is_that_of_a_unit_some_kind_takes_and_none_is_ambiguous() -> None:
    written = {unit for _, unit in ACCEPTED}
    assert set(SPELLINGS) <= written
    assert not set(SPELLINGS) & set(SPELLINGS.values())
    assert not [(kind, unit) for kind, unit in AMBIGUOUS if unit in KINDS[kind].units]


def test_a_unit_without_a_line_is_not_printed_raw() -> None:
    with pytest.raises(KeyError, match="furlong"):
        unit_sign("furlong")


@pytest.mark.parametrize(
    ("number", "unit", "printed"), [("1", "days", "1_day"), ("2", "day", "2_days"), ("1.5", "week", "1.5_weeks")]
)
def test_a_word_for_a_unit_follows_its_number(number: str, unit: str, printed: str) -> None:
    assert show(Quantity.of("duration", Fraction(number), unit, number)).replace("\N{NO-BREAK SPACE}", "_") == printed


@pytest.mark.parametrize(("kind", "options"), [("thickness", FilmUnit), ("temperature", TemperatureUnit)])
def test_second_units_are_the_signs_of_their_kind(kind: str, options: type[FilmUnit] | type[TemperatureUnit]) -> None:
    """What may stand in brackets is what the kind accepts, one spelling a sign; a millimetre is no second unit of film."""
    offered = {UNITS[one.value].sign for one in options}
    asked = {UNITS[unit].sign for unit in KINDS[kind].units} - {"mm"}
    assert offered == asked, f"{options.__name__} of specgen/model/project.py has to hold the units of the kind {kind}"


def test_the_schema_offers_every_unit() -> None:
    whole = {kind: json.dumps(schema(kind), ensure_ascii=False).replace("\\\\", "") for kind in SINGULAR}
    offered = {kind.name for kind in KINDS.values() if any("|".join(kind.units) in text for text in whole.values())}
    assert set(KINDS) - offered == NOT_WRITTEN


def test_units_of_tables_that_are_printed_are_declared() -> None:
    counted = {"", "cans"}
    assert {row["unit"] for row in table("storage_limits").rows} - counted <= set(UNITS)
    assert {row["unit"] for row in table("acute_toxicity").rows} <= set(UNITS)
