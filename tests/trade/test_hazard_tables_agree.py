"""The tables on hazards read against each other: what cannot all be true is named, or stands among the known with its reason."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from fractions import Fraction
from itertools import combinations
from pathlib import Path

import pytest
import yaml

from specgen.standards.tables import Row, table
from specgen.trade.physical import physical
from specgen.trade.vapour import counted_at

KNOWN = yaml.safe_load((Path(__file__).parent / "data" / "hazard_tables_known.yaml").read_text("utf-8"))
Finding = tuple[str, str]
"""Of which substance or row, and what cannot be."""

LASTING = {"8 h", "up to 10 h"}
# ppm and mg/m3 of one row are both rounded by whoever printed them, and more roughly than to their last digit: further apart than this
# share, or than half a unit of their last digits, one of them is wrong
ROUNDED = Fraction(4, 100)
# a Flam. Liq. 1 boils at 35 degC at most; 1 and 2 flash below 23, 3 up to 60 (CLP Annex I, Table 2.6.1)
FLASHES = {"1": (None, 23), "2": (None, 23), "3": (23, 60), "": (60, None)}


def harmonised() -> list[Row]:
    return [row for row in table("harmonised_classes").rows if row["classes"]]


def classes(row: Row) -> Iterator[tuple[str, str, str]]:
    for cell in row["classes"].split(", "):
        hazard_class, category, statement = cell.split()
        yield hazard_class, category, statement


def limits(row: Row) -> Iterator[tuple[str, Fraction]]:
    for cell in row["limits"].split(", ") if row["limits"] else ():
        *of, least = cell.split()
        yield " ".join(of), Fraction(least)


def conversion() -> Iterator[Finding]:
    volumes = {row["temperature_degc"]: Fraction(row["litres_per_mole"]) for row in table("molar_volumes").rows}
    for row in table("exposure_limits").rows:
        found, at = physical(row["cas"]), counted_at(row["jurisdiction"])
        if not (row["ppm"] and row["mg_m3"] and found and found.molar_mass and at):
            continue
        each = found.molar_mass.quantity.number / volumes[at]
        reckoned = Fraction(row["ppm"]) * each
        room = max(ROUNDED * reckoned, _half(row["mg_m3"]) + _half(row["ppm"]) * each)
        if abs(reckoned - Fraction(row["mg_m3"])) > room:
            yield row["id"], f"{row['ppm']} ppm are {float(reckoned):.1f} mg/m3, not {row['mg_m3']}"


def _half(digits: str) -> Fraction:
    """Half a unit of the last digit as it is printed."""
    return Fraction(1, 2 * 10 ** len(digits.partition(".")[2]))


def short_term() -> Iterator[Finding]:
    held: dict[tuple[str, ...], list[Row]] = {}
    for row in table("exposure_limits").rows:
        held.setdefault((row["cas"] or row["substance"], row["jurisdiction"], row["body"]), []).append(row)
    for rows in held.values():
        lasting = [row for row in rows if row["period"] in LASTING]
        short = [row for row in rows if row["period"] not in LASTING | {"none"}]
        for long in lasting:
            for brief in short:
                together = _meet(long, brief)
                for unit in ("ppm", "mg_m3"):
                    if together and long[unit] and brief[unit] and Fraction(brief[unit]) < Fraction(long[unit]):
                        yield brief["id"], f"{brief[unit]} is below the {long[unit]} of the working day"


def one_answer() -> Iterator[Finding]:
    """Two limits of one body, period and day for one substance."""
    rows = table("exposure_limits").rows
    keys = ("cas", "jurisdiction", "body", "period")
    for one, other in combinations([row for row in rows if row["cas"]], 2):
        if all(one[key] == other[key] for key in keys) and _meet(one, other):
            yield one["id"], f"holds on the same day as {other['id']}"


def dates() -> Iterator[Finding]:
    for name, key in (("exposure_limits", "id"), ("harmonised_classes", "cas")):
        for row in table(name).rows:
            if row["from"] and row["until"] and row["until"] < row["from"]:
                yield row[key], f"ends on {row['until']}, before it begins"


def _meet(one: Row, other: Row) -> bool:
    return (not one["until"] or one["until"] >= (other["from"] or "")) and (
        not other["until"] or other["until"] >= (one["from"] or "")
    )


def explosive() -> Iterator[Finding]:
    for row in table("physical_data").rows:
        for source in ("iec", "nfpa", "niosh"):
            low, high = row[f"lel_{source}"], row[f"uel_{source}"]
            if low and high and Fraction(low) >= Fraction(high):
                yield row["cas"], f"lower explosive limit {low} is not below the upper one {high} ({source})"
        lows = [Fraction(row[f"lel_{source}"]) for source in ("iec", "nfpa", "niosh") if row[f"lel_{source}"]]
        if lows and max(lows) > 2 * min(lows):
            yield row["cas"], f"lower explosive limits lie apart by more than two: {sorted(map(float, lows))}"


def flammability() -> Iterator[Finding]:
    """The flash point that is taken, against the category the law gives today."""
    today = {row["cas"]: row for row in harmonised() if row["cas"] and not row["until"]}
    for cas, row in today.items():
        found = physical(cas)
        if found is None or found.flash is None or found.boiling is None or found.boiling < 20:
            continue
        category = next((category for name, category, _ in classes(row) if name == "flammable_liquids"), "")
        least, most = FLASHES[category]
        if (least is not None and found.flash < least) or (most is not None and found.flash > most):
            named = f"Flam. Liq. {category}" if category else "no flammable liquid"
            yield cas, f"{row['name']} flashes at {float(found.flash)} degC and is {named}"
        if category == "1" and found.boiling > 35:
            yield cas, f"{row['name']} boils at {float(found.boiling)} degC and is Flam. Liq. 1"


def saturation() -> Iterator[Finding]:
    """A vapour that cannot rise to its own limit in still air, whichever source of its pressure is asked."""
    pressures = {
        row["cas"]: max(map(Fraction, held))
        for row in table("physical_data").rows
        if (
            held := [
                row[f"vapour_pressure_{source}"] for source in ("library", "niosh") if row[f"vapour_pressure_{source}"]
            ]
        )
    }
    told = set()
    for row in table("exposure_limits").rows:
        pressure = pressures.get(row["cas"])
        if pressure is None or not row["ppm"] or row["cas"] in told:
            continue
        most = pressure / Fraction("101.325") * 1_000_000
        if most < Fraction(row["ppm"]):
            told.add(row["cas"])
            yield (
                row["cas"],
                f"{row['substance']} saturates at {float(most):.4f} ppm, below its limit of {row['ppm']} ppm",
            )


def statements() -> Iterator[Finding]:
    codes: dict[tuple[str, str], set[str]] = {}
    for row in table("label_elements").rows:
        codes.setdefault((row["hazard_class"], row["category"]), set()).update(row["statements"].split())
    for row in harmonised():
        for hazard_class, category, statement in classes(row):
            known = codes.get((hazard_class, category), set())
            # H350i, H360FD and the like say more of the same statement
            if not any(statement.startswith(code[:4]) for code in known):
                yield row["cas"] or row["name"], f"{hazard_class} {category} does not bear {statement}"


def factors() -> Iterator[Finding]:
    for row in table("harmonised_classes").rows:
        for factor in row["m_factors"].split():
            if factor.strip("0") != "1" or not factor.startswith("1"):
                yield row["cas"] or row["name"], f"M-factor {factor} is no power of ten"


def shares() -> Iterator[Finding]:
    """A limit outside what a share can be, for a class the entry has not, or below the limit from which it sets off an allergy."""
    for row in table("harmonised_classes").rows:
        held = {name for name, *_ in classes(row)} if row["classes"] else set()
        for of, least in limits(row):
            hazard_class = of.split()[0]
            if not 0 < least <= 100:
                yield row["cas"] or row["name"], f"{of} from {float(least)} %"
            # corrosive substances have milder limits below, and some a limit for the airways beside them
            if hazard_class not in held | {"skin_corrosion", "eye_damage", "stot_single"}:
                yield row["cas"] or row["name"], f"{of} has a limit and no class"
    generic = {row["id"]: Fraction(row["at_least"]) for row in table("mixture_limits").rows if row["at_least"]}
    named = {"1": "skin_sensitisation_1", "1A": "skin_sensitisation_1A", "1B": "skin_sensitisation_1"}
    for row in table("elicitation_limits").rows:
        # the share of a specific limit lies below it as long as it is less than the whole
        if Fraction(row["at_least"]) >= generic.get(named.get(row["category"], ""), 1):
            yield row["category"], "elicitation limit is not below the limit of the class"


def registry_numbers() -> Iterator[Finding]:
    for name in ("exposure_limits", "physical_data", "harmonised_classes", "heat_of_combustion"):
        for row in table(name).rows:
            if row["cas"] and not _holds(row["cas"]):
                yield row["cas"], f"check digit of the registry number does not hold, in {name}"


def _holds(cas: str) -> bool:
    digits = cas.replace("-", "")
    return sum(place * int(digit) for place, digit in enumerate(reversed(digits[:-1]), 1)) % 10 == int(digits[-1])


def vapour_limits_have_a_mass() -> Iterator[Finding]:
    """A limit in ppm alone of a substance whose molar mass nobody knows cannot be set against a mass let off."""
    for row in table("exposure_limits").rows:
        found = physical(row["cas"])
        if row["ppm"] and not row["mg_m3"] and found is not None and found.molar_mass is None:
            yield row["id"], "is stated in ppm alone, and the molar mass is not in the table"


CHECKS: dict[str, Callable[[], Iterator[Finding]]] = {
    "conversion": conversion,
    "dates": dates,
    "explosive": explosive,
    "factors": factors,
    "flammability": flammability,
    "one_answer": one_answer,
    "registry_numbers": registry_numbers,
    "saturation": saturation,
    "shares": shares,
    "short_term": short_term,
    "statements": statements,
    "vapour_limits_have_a_mass": vapour_limits_have_a_mass,
}


@pytest.mark.parametrize("check", CHECKS)
def test_the_tables_do_not_contradict_each_other(check: str) -> None:
    known = {entry["of"] for entry in KNOWN if entry["check"] == check}
    found = dict(CHECKS[check]())
    assert {of: what for of, what in found.items() if of not in known} == {}
    assert known - set(found) == set(), "what is met no longer is known for nothing"


def test_what_is_known_names_a_check_and_a_reason() -> None:
    assert {entry["check"] for entry in KNOWN} <= set(CHECKS)
    assert all(entry["why"] for entry in KNOWN)


def test_every_slip_stands_in_the_table_and_every_column_has_a_source() -> None:
    rows = {row["cas"]: row for row in table("physical_data").rows}
    assert all(rows[slip["cas"]][slip["column"]] for slip in table("physical_left_out").rows)
    sources = {row["source"] for row in table("physical_sources").rows}
    columns = [c for c in table("physical_data").columns if c.startswith(("lel_", "uel_", "flash_", "vapour_"))]
    assert {column.rpartition("_")[2] for column in columns} == sources
