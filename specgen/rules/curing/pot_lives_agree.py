"""CUR008 A pot life at a temperature is stated once

Checks
    The pot life of each product and those at other temperatures: where the same mixed volume is meant, no two hold for the same temperature with different times. Bands may meet at an end.
Why
    Of two pot lives at one temperature the shorter is thrown away by one painter, and the longer believed by the other.
Passes
    products.barrier.pot_life: {time: 3 h, air: 15..20 degC, other_temperatures: [{id: warm, time: 2 h, air: 20..25 degC}]}

    products.barrier.pot_life: {time: 3 h, air: 20 degC, volume: 1 L, other_temperatures: [{id: large, time: 2 h, air: 20 degC, volume: 5 L}]}
Fails
    products.barrier.pot_life: {time: 3 h, air: 15..22 degC, other_temperatures: [{id: warm, time: 2 h, air: 20..25 degC}]}    # at products.barrier.pot_life.other_temperatures.warm.air

    products.barrier.pot_life: {time: 3 h, air: 20 degC, other_temperatures: [{id: warm, time: 2 h, air: 25 degC}, {id: again, time: 90 min, air: 25 degC}]}    # at products.barrier.pot_life.other_temperatures.again.air
To put right
    Let the bands meet at an end, or leave one of the two out.
"""

from itertools import combinations

from specgen.model.drying import PotLife, PotLifeAt
from specgen.rules.kit import (
    LOGIC,
    WARNING,
    Path,
    Problem,
    Problems,
    Product,
    Quantity,
    Range,
    Spec,
    date,
    rule,
)
from specgen.units.display import show, show_range


@rule("CUR008", on=Product, severity=WARNING, source=LOGIC)
def pot_lives_agree(product: Product, spec: Spec, on: date) -> Problems:
    life = product.pot_life
    if life is None:
        return
    told: set[Path] = set()
    entries: list[tuple[PotLife | PotLifeAt, Path]] = [
        (life, ("pot_life",)),
        *((one, ("pot_life", "other_temperatures", one.id)) for one in life.other_temperatures),
    ]
    for (first, _), (second, path) in combinations(entries, 2):
        if (
            first.volume == second.volume
            and first.time != second.time
            and path not in told
            and _meet(first.air, second.air)
        ):
            told.add(path)
            what = f"two pot lives hold at {_said(second.air)}: {_said(first.time)} and {_said(second.time)}"
            yield Problem((*path, "air"), what)


def _meet(first: Quantity | Range, second: Quantity | Range) -> bool:
    """Whether a temperature belongs to both; the common end of two bands belongs to either."""
    lows, highs = zip(*(_ends(air) for air in (first, second)), strict=True)
    low, high = max(lows), min(highs)
    single = any(isinstance(air, Quantity) for air in (first, second))
    both_single = all(isinstance(air, Quantity) for air in (first, second))
    return low < high or (low == high and (both_single or (single and min(lows) < low < max(highs))))


def _said(value: Quantity | Range) -> str:
    return show(value) if isinstance(value, Quantity) else show_range(value)


def _ends(air: Quantity | Range) -> tuple[float, float]:
    if isinstance(air, Quantity):
        return float(air.base), float(air.base)
    low = float(air.low.base) if air.low is not None else float("-inf")
    high = float(air.high.base) if air.high is not None else float("inf")
    return low, high
