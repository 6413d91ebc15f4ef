"""INS018 The test voltage of a holiday test fits the film

Checks
    Each inspection point with a test voltage, typed or, where none is, the only voltage in its words: up to 100 V, which is the wet sponge, it is near one of its usual voltages, 9, 67.5 and 90 V, and the nominal DFT of the coats beneath is at most 500 um, or 300 um at 9 V; above it, which is the spark, that DFT is at least 200 um, and the voltage lies between the two published formulas, 525 V and 1250 V times the root of the DFT in mil, with 40 % to either side.
Why
    Too low a voltage finds no pore. Too high a voltage burns holes through sound paint, and each has to be repaired.
Passes
    Given a tank under water with a holiday test
    jobs.rails.inspection.pores.voltage: 67.5 V

    Given a tank under water with a holiday test
    jobs.rails.inspection.pores.voltage: 5.8 kV

    Given a tank under water with a holiday test
    without jobs.rails.inspection.pores.voltage
    jobs.rails.inspection.pores.method: "Spark, 1.05 kV"

    Given a tank under water with a holiday test
    systems.deck.layers.second.film: {nominal: 6 mil}
    jobs.rails.inspection.pores.voltage: 9 V

    Given a tank under water with a holiday test
    systems.deck.layers.second.film: {nominal: 8 mil}
    jobs.rails.inspection.pores.voltage: 67.5 V
Fails
    Given a tank under water with a holiday test
    systems.deck.layers.second.film: {nominal: 6.1 mil}
    jobs.rails.inspection.pores.voltage: 9 V    # at jobs.rails.inspection.pores.voltage

    Given a tank under water with a holiday test
    jobs.rails.inspection.pores.voltage: 17 V    # at jobs.rails.inspection.pores.voltage

    Given a tank under water with a holiday test
    systems.deck.layers.second.film: {nominal: 9 mil}    # also FLM001 at systems.deck.layers.second.film.nominal
    jobs.rails.inspection.pores.voltage: 9 V    # at jobs.rails.inspection.pores.voltage

    Given a tank under water with a holiday test
    jobs.rails.inspection.pores.voltage: 5.9 kV    # at jobs.rails.inspection.pores.voltage

    Given a tank under water with a holiday test
    jobs.rails.inspection.pores.voltage: 1040 V    # at jobs.rails.inspection.pores.voltage

    Given a tank under water with a holiday test
    without jobs.rails.inspection.pores.voltage
    jobs.rails.inspection.pores.method: "High voltage, ASTM D5162, 24 kV"    # at jobs.rails.inspection.pores.method

    Given a tank under water with a holiday test
    systems.deck.layers.second.film: {nominal: 14.1 mil}    # also FLM001 at systems.deck.layers.second.film.nominal    # also FLM008 at systems.deck.layers.second.coats    # also FLM014 at systems.deck.layers.second.coats    # also OLD010 at jobs.rails.items.LOCKER.strip_limit
    jobs.rails.inspection.pores.voltage: 67.5 V    # at jobs.rails.inspection.pores.voltage

    jobs.refit.inspection.pores: {id: pores, check: Pores, at: completion, items: [DOOR], voltage: 900 V, criterion: {text: none}}    # at jobs.refit.inspection.pores.voltage
To put right
    Write voltage at the point, from the standard named there for the specified DFT; up to 500 um of film the wet sponge does.
"""

import math
import re
from fractions import Fraction

from specgen.facts.job.inspected import places
from specgen.facts.job.looked_for import PORES, words_of
from specgen.facts.job.points import layers_read
from specgen.facts.layer.sums import film_sum_of
from specgen.model.acceptance import InspectionPoint
from specgen.rules.kit import WARNING, Job, Path, Problem, Problems, Quantity, Row, Spec, date, rule, show, table
from specgen.units.between_units import explained_by_rounding
from specgen.units.rounding import round_half_up

_TABLE = table("holiday_test")
_SPONGES = ("sponge_low", "sponge_mean", "sponge_high")
_IN_WORDS = re.compile(r"(?<![\w.])(\d+(?:\.\d+)?) ?(kV|V|volts?)\b")


@rule("INS018", on=Job, severity=WARNING, source=_TABLE.citation)
def voltage_fits_film(job: Job, spec: Spec, on: date) -> Problems:
    for point in job.inspection:
        stated = _stated(point)
        if stated is None:
            continue
        voltage, leaf = stated
        told: set[str] = set()
        for _, system in places(point, job, spec):
            layers = layers_read(point, system)
            film = film_sum_of(system, layers, spec, "nominal") or film_sum_of(system, layers, spec, "min")
            problem = _misfit(voltage, film.value) if film is not None else None
            if problem is not None and problem[0] not in told:
                what, row = problem
                told.add(what)
                path: Path = ("inspection", point.id, leaf)
                yield Problem(path, f"{point.id}: {what}", source=_TABLE.row_citation(row))


def _stated(point: InspectionPoint) -> tuple[Quantity, str] | None:
    """The voltage of a point and the leaf it stands in; of words only where they name one alone, and pores."""
    if point.voltage is not None:
        return point.voltage, "voltage"
    if not PORES.search(words_of(point)):
        return None
    found = [(number, leaf) for leaf in ("check", "method") for number in _IN_WORDS.findall(getattr(point, leaf) or "")]
    if len(found) != 1:
        return None
    (digits, unit), leaf = found[0]
    return Quantity.of("voltage", Fraction(digits), "kV" if unit == "kV" else "V", digits), leaf


def _misfit(voltage: Quantity, film: Quantity) -> tuple[str, Row] | None:
    """What is wrong with a voltage on a film, and the row that says so; None where nothing is."""
    volts, microns = voltage.to("V"), film.to("um")
    on = f"test voltage {show(voltage)} on a nominal DFT of {show(film)}"
    if volts <= _figure("sponge_voltage"):
        if _above(film, "sponge_film"):
            return f"{on}; the wet sponge finds pores up to {_figure('sponge_film')} um", _row("sponge_film")
        if volts and not any(abs(volts / _figure(one) - 1) <= _figure("sponge_near") for one in _SPONGES):
            return f"{on}; the wet sponge is used at 9, 67.5 or 90 V", _row("sponge_mean")
        below_mean = volts < _figure("sponge_mean") * (1 - _figure("sponge_near"))
        if below_mean and _above(film, "sponge_low_film"):
            thickest = _figure("sponge_low_film")
            return f"{on}; the low voltage of the wet sponge finds pores up to {thickest} um", _row("sponge_low_film")
        return None
    thinnest = _figure("spark_film")
    if microns < thinnest:
        return f"{on}; the spark burns films below {thinnest} um", _row("spark_film")
    root, beyond = math.sqrt(film.to("mil")), float(_figure("allowance"))
    low, high = float(_figure("spark_least")) * root, float(_figure("spark_most")) * root
    if low * (1 - beyond) <= volts <= high * (1 + beyond):
        return None
    return f"{on}; the published formulas give {_kilovolts(low)} to {_kilovolts(high)}", _row("spark_most")


def _above(film: Quantity, row: str) -> bool:
    """True where a film is above the figure of a row; 20 mil is the 500 um of the source."""
    most = Quantity.of("thickness", _figure(row), "um", _row(row)["value"])
    return film > most and not explained_by_rounding(film, most)


def _kilovolts(volts: float) -> str:
    return f"{round_half_up(Quantity.of('voltage', Fraction(volts), 'V').to('kV'), 1)} kV"


def _row(name: str) -> Row:
    return _TABLE.row("id", name)


def _figure(name: str) -> Fraction:
    return Fraction(_row(name)["value"])
