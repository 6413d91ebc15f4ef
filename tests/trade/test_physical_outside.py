"""Figures of substances against open-source libraries of chemistry, whose own slips are named."""

from __future__ import annotations

from fractions import Fraction

import chemicals
import pytest
from thermo.vapor_pressure import VaporPressure

from specgen.standards.tables import Row, table
from specgen.trade.physical import physical

ROWS = {row["cas"]: row for row in table("physical_data").rows}
# mixed xylenes are put together from their isomers and are in no library
IN_LIBRARY = [cas for cas in ROWS if cas != "1330-20-7"]
METHODS = {"iec": "IEC 60079-20-1 (2010)", "nfpa": "NFPA 497 (2008)", "dippr": "Serat DIPPR (2017)", "open": "WIKIDATA"}
LEFT_OUT = {(row["cas"], row["column"]) for row in table("physical_left_out").rows}
# Where the library and the Pocket Guide lie apart by more than a quarter; nothing is reckoned from either but a check.
PRESSURES_APART = {
    "110-12-3", "108-94-1", "123-42-2", "628-63-7", "111-15-9", "109-86-4", "110-49-6", "1330-20-7", "98-82-8", "91-20-3", "71-36-3",
    "111-40-0", "100-37-8", "141-43-5", "110-91-8", "78-10-4", "95-47-6", "108-38-3", "106-42-3",
}  # fmt: skip


def _columns(row: Row, quantity: str) -> list[tuple[str, str]]:
    """Columns of a quantity that hold a figure, with the method of the library."""
    held = ((f"{quantity}_{source}", method) for source, method in METHODS.items())
    return [(column, method) for column, method in held if row.get(column)]


@pytest.mark.parametrize("cas", IN_LIBRARY)
def test_molar_mass(cas: str) -> None:
    if ROWS[cas]["molar_mass"]:
        assert abs(chemicals.MW(cas) - float(ROWS[cas]["molar_mass"])) <= 0.02


@pytest.mark.parametrize("cas", IN_LIBRARY)
def test_explosive_limits_and_flash_points_are_those_of_the_library(cas: str) -> None:
    row = ROWS[cas]
    for column, method in _columns(row, "lel"):
        assert chemicals.LFL(CASRN=cas, method=method) * 100 == pytest.approx(float(row[column]), abs=0.005)
    for column, method in _columns(row, "uel"):
        assert chemicals.UFL(CASRN=cas, method=method) * 100 == pytest.approx(float(row[column]), abs=0.05)
    for column, method in _columns(row, "flash"):
        assert chemicals.T_flash(cas, method=method) - 273.15 == pytest.approx(float(row[column]), abs=0.06)


@pytest.mark.parametrize("cas", IN_LIBRARY)
def test_no_published_explosive_limit_of_the_library_is_lower_than_ours(cas: str) -> None:
    found = physical(cas)
    ours = found.explosive if found is not None else None
    methods = [method for method in chemicals.LFL_methods(CASRN=cas) if method in METHODS.values()]
    published = [chemicals.LFL(CASRN=cas, method=method) * 100 for method in methods]
    if published:
        assert ours is not None
        assert float(ours.figure.quantity.number) <= min(published) + 0.051


@pytest.mark.parametrize("cas", IN_LIBRARY)
def test_no_credible_flash_point_of_the_library_is_lower_than_ours(cas: str) -> None:
    found = physical(cas)
    sources = [source for source in ("iec", "nfpa", "open") if (cas, f"flash_{source}") not in LEFT_OUT]
    methods = [METHODS[source] for source in sources if METHODS[source] in chemicals.T_flash_methods(cas)]
    flashes = [chemicals.T_flash(cas, method=method) - 273.15 for method in methods]
    if flashes and found is not None and (cas, "flash_open") not in LEFT_OUT:
        assert found.flash is not None
        assert float(found.flash) <= min(flashes) + 0.6


def test_left_out_figures_are_the_slips_of_the_library_and_not_ours() -> None:
    # methanol flashes at 9 to 12 degC; the library has -31
    assert chemicals.T_flash("67-56-1", method="Serat DIPPR (2017)") - 273.15 < -25
    methanol = physical("67-56-1")
    assert methanol is not None
    assert methanol.flash == 9
    isobutanol = physical("78-83-1")
    assert isobutanol is not None
    assert isobutanol.flash == Fraction("27.8")


@pytest.mark.parametrize("cas", [cas for cas in IN_LIBRARY if ROWS[cas]["vapour_pressure_library"]])
def test_vapour_pressure_at_20_degrees(cas: str) -> None:
    row = ROWS[cas]
    reckoned = VaporPressure(CASRN=cas).T_dependent_property(293.15)
    ours = float(row["vapour_pressure_library"])
    assert reckoned / 1000 == pytest.approx(ours, rel=0.02, abs=0.0001)
    if row["vapour_pressure_niosh"] and ours > 0.001:
        apart = max(ours, float(row["vapour_pressure_niosh"])) / min(ours, float(row["vapour_pressure_niosh"]))
        assert (apart > 1.25) == (cas in PRESSURES_APART)


HEATS = [row for row in table("heat_of_combustion").rows if row["usable"] == "yes" and row["cas"] in IN_LIBRARY]


@pytest.mark.parametrize("row", HEATS, ids=lambda row: row["name"])
def test_net_heat_of_combustion(row: Row) -> None:
    """The library works it out from heats of formation: of the liquid where it has one, else of the gas, which is not below it."""
    cas, mass = row["cas"], chemicals.MW(row["cas"])
    boils_off = float(ROWS[cas]["boiling"]) < 20
    formation = None if boils_off else chemicals.Hfl(cas)
    heat = chemicals.combustion_data(formula=row["formula"], Hf=formation or chemicals.Hfg(cas), MW=mass).LHV
    assert -heat / mass / 1000 == pytest.approx(float(row["net_heat"]), abs=0.011)
