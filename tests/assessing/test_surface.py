"""A prepared surface by what instruments and comparators tell of it: salt as conductivity, profile as a grade."""

from __future__ import annotations

import pytest

from specgen.assessing.results import At, Verdict
from specgen.facts.tests.profile_grade import grade_ranges
from specgen.report.assessment_report import as_text
from specgen.standards.citations import Basis
from specgen.trade.salt import salt_on_surface
from specgen.units.quantity import parse_quantity
from tests.assessing.job import assessed, told

P, F, OPEN = Verdict.CONFORMING, Verdict.NOT_CONFORMING, Verdict.NOT_DECIDED
LIMITS = {"preparations.sand-steel.salt_limit": "50 mg/m2"}
HEAD = "point,item,test,value,unit,water,by\n"


def _prepared(row: str, changes: dict[str, str]) -> tuple[At, list[tuple[str, int, int]]]:
    found = assessed(HEAD + row + "\n", changes=changes)
    assert as_text(found)
    return next(at for at in found.results if (at.point.id, at.item.id) == ("prepared", "DOOR")), told(found)


@pytest.mark.parametrize(
    ("rise", "water", "mass"),
    [
        # 4 mg/m2 for each µS/cm in 10 mL on 1250 mm2, 6 in 15 mL: the reference's rows, which follow from 5 kg/(m2 S)
        ("1", "10", "4"),
        ("1", "15", "6"),
        ("12.5", "10", "50"),
        ("20", "3", "24"),
    ],
)
def test_salt_follows_from_the_rise_of_conductivity(rise: str, water: str, mass: str) -> None:
    found = salt_on_surface(
        "s", parse_quantity("conductivity", f"{rise} µS/cm"), parse_quantity("volume", f"{water} mL")
    )
    assert found.quantity == parse_quantity("surface_density", f"{mass} mg/m2")
    assert found.source.basis is Basis.MEMORY


@pytest.mark.parametrize(
    ("row", "verdict", "said"),
    [
        ("prepared,DOOR,salt,12.5,µS/cm,10 mL,ka", P, "50.0 mg/m² of salt, from a rise of 12.5 µS/cm in 10 mL"),
        ("prepared,DOOR,salt,12.6,uS/cm,10,ka", F, "salt 50.4 mg/m², at most 50 mg/m² is allowed"),
        ("prepared,DOOR,salt,8.4 µS/cm,,15 mL,ka", F, "factor of ISO 8502-9, not verified"),
        ("prepared,DOOR,salt,8.3 µS/cm,,15 mL,ka", P, "49.8 mg/m² of salt"),
        # the water decides how much it is: without it nothing is said
        ("prepared,DOOR,salt,2,µS/cm,,ka", OPEN, "how much water was on the patch is not recorded"),
        ("prepared,DOOR,salt,45,mg/m2,,ka", P, ""),
    ],
)
def test_a_rise_of_conductivity_is_judged_as_mass_on_the_area(row: str, verdict: Verdict, said: str) -> None:
    at, faults = _prepared(row, LIMITS)
    assert (at.verdict, faults) == (verdict, [])
    assert said in "; ".join(at.reasons).replace("\N{NO-BREAK SPACE}", " ")


def test_water_that_cannot_be_read_is_told_in_its_column() -> None:
    at, faults = _prepared("prepared,DOOR,salt,2,µS/cm,ten,ka", LIMITS)
    assert (at.verdict, faults) == (OPEN, [("RDG003", 2, 6)])
    # a patch without water would show no salt at any rise
    at, faults = _prepared("prepared,DOOR,salt,200,µS/cm,0 mL,ka", LIMITS)
    assert (at.verdict, faults) == (OPEN, [("RDG003", 2, 6)])
    at, faults = _prepared("prepared,DOOR,salt,2,mS,10,ka", LIMITS)
    assert (at.verdict, faults) == (OPEN, [("RDG003", 2, 4)])


DUST = {"preparations.sand-steel.dust_quantity": "2", "preparations.sand-steel.dust_size": "3"}


@pytest.mark.parametrize(
    ("row", "verdict", "faults"),
    [
        ("dust-quantity,2", P, []),
        ("dust-quantity,3", F, []),
        ("dust-size,3", P, []),
        ("dust-size,4", F, []),
        # a stroke before a rating makes none that is lower
        ("dust-quantity,-3", OPEN, [("RDG003", 2, 4)]),
    ],
)
def test_quantity_and_size_of_dust_have_a_limit_each(
    row: str, verdict: Verdict, faults: list[tuple[str, int, int]]
) -> None:
    at, told_ = _prepared(f"prepared,DOOR,{row},,,ka", DUST)
    assert (at.verdict, told_) == (verdict, faults)


@pytest.mark.parametrize("row", ["salt,5,mg/m2", "profile,40,um", "dust-quantity,0,", "dust-size,0,"])
def test_what_has_no_limit_decides_nothing(row: str) -> None:
    at, faults = _prepared(f"prepared,DOOR,{row},,ka", {})
    assert (at.verdict, faults) == (OPEN, [])


@pytest.mark.parametrize(
    ("asked", "grade", "verdict"),
    [
        ("60..100 um", "medium grit", P),
        ("60..100 um", "Medium (G)", P),
        ("40..110 um", "medium", P),
        ("25..59 um", "medium G", F),
        ("100..150 um", "coarse shot", F),
        ("101..150 um", "coarse S", F),
        ("50..85 um", "medium grit", OPEN),
        # of grit it would lie outside, of shot within: somebody has to say which
        ("40..75 um", "medium S", P),
        ("20..55 um", "medium", OPEN),
    ],
)
def test_a_grade_of_a_comparator_is_held_against_the_profile(asked: str, grade: str, verdict: Verdict) -> None:
    changes = {"preparations.sand-steel.steps.sand.profile": asked}
    at, faults = _prepared(f"prepared,DOOR,profile,{grade},,,ka", changes)
    assert (at.verdict, faults) == (verdict, [])
    assert "limits of the grades not verified" in at.reasons[0]


@pytest.mark.parametrize("text", ["finer than fine", "medium-coarse", "medium chalk", "coarser", ""])
def test_what_is_no_grade_is_not_guessed(text: str) -> None:
    assert grade_ranges(text) == {}
