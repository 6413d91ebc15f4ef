"""A unit is declared in one place: what an author may write has a printed sign, a meaning, and is offered wherever units are."""

from __future__ import annotations

import json
from fractions import Fraction

import pytest

from specgen.model.project import FilmUnit, TemperatureUnit
from specgen.model.schema import schema
from specgen.model.spec import SINGULAR
from specgen.standards.tables import table
from specgen.units.display import show, unit_sign
from specgen.units.kinds import KINDS, UNITS
from specgen.units.known_units import scale
from specgen.units.quantity import Quantity, parse_quantity

# A sign that is no word and no letters of the unit file: digits set high or low, and the letters of micro and degree.
RAW = ("um", "deg", "2", "3", "*")
# What a working computes or a table states; no source has a leaf of these kinds.
NOT_WRITTEN = {"concentration", "molar_mass", "molar_volume", "speed", "vapour_share"}
ACCEPTED = sorted({(kind.name, unit) for kind in KINDS.values() for unit in kind.units})


@pytest.mark.parametrize(("kind", "unit"), ACCEPTED)
def test_what_an_author_may_write_is_declared_and_printed(kind: str, unit: str) -> None:
    assert unit in UNITS, f"the kind {kind} accepts {unit}, which has no line in UNITS"
    assert not [raw for raw in RAW if raw in UNITS[unit].sign], f"{unit} would be printed raw"
    assert show(parse_quantity(kind, f"1 {unit}")) == f"1\N{NO-BREAK SPACE}{UNITS[unit].sign}"


def test_every_declared_unit_is_used_or_counted_by_workings_alone() -> None:
    accepted = {unit for _, unit in ACCEPTED}
    assert {unit for unit, said in UNITS.items() if bool(said.meaning) != (unit in accepted)} == set()


def test_spellings_of_one_sign_mean_the_same() -> None:
    for unit, said in UNITS.items():
        alike = {other.meaning for other in UNITS.values() if (other.sign, other.many) == (said.sign, said.many)}
        assert alike == {said.meaning}, unit
        if said.meaning:
            assert scale(said.meaning, said.meaning) == (1, 0)


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
    left_out = {"mm"}
    assert {UNITS[one.value].sign for one in options} == {UNITS[unit].sign for unit in KINDS[kind].units} - left_out


def test_the_schema_offers_every_unit() -> None:
    whole = {kind: json.dumps(schema(kind), ensure_ascii=False).replace("\\\\", "") for kind in SINGULAR}
    offered = {kind.name for kind in KINDS.values() if any("|".join(kind.units) in text for text in whole.values())}
    assert set(KINDS) - offered == NOT_WRITTEN


def test_units_of_tables_that_are_printed_are_declared() -> None:
    counted = {"", "cans"}
    assert {row["unit"] for row in table("storage_limits").rows} - counted <= set(UNITS)
    assert {row["unit"] for row in table("acute_toxicity").rows} <= set(UNITS)
