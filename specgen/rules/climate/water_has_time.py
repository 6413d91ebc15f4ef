"""CLI015 A coat whose hardener is released by water has time to take it up

Checks
    The minimum overcoating interval of each coat, against the time its water takes in the coldest and driest air of any job, carried over from the interval, air, humidity and film that the product states. An estimate, uncertain by three times, so a warning at most.
Why
    The next coat is one more skin for the water to go through: what is buried without it stays soft.
Passes
    products.primer.overcoat.any-warm.humidity: 60 %
    products.primer.overcoat.any-warm.film: 60 um
    jobs.refit.climate.humidity: 60..75 %

    products.primer.overcoat.any-warm.humidity: 60 %
Fails
    products.primer.overcoat.any-warm.humidity: 60 %    # at systems.cab.layers.primer.overcoat_interval
    products.primer.overcoat.any-warm.film: 60 um

    products.primer.overcoat.any-warm.humidity: 60 %    # at systems.cab.layers.primer.overcoat_interval
    products.primer.overcoat.any-warm.film: 50 um
    jobs.refit.climate.humidity: 60..75 %
To put right
    Wait longer, spray thinner cross coats, or moisten the air; `specgen climate` tells the water in the air with which the interval is enough.
"""

from itertools import pairwise

from specgen.facts.layer.waits import driest_wait
from specgen.rules.kit import PRACTICE, WARNING, Problem, Problems, Spec, System, date, rule
from specgen.trade.working import Working
from specgen.units.waiting import show_wait


@rule("CLI015", on=System, severity=WARNING, source=PRACTICE)
def water_has_time(system: System, spec: Spec, on: date) -> Problems:
    for below, above in pairwise(system.layers):
        own = below.overcoat_interval.low if below.overcoat_interval is not None else None
        if own is None:
            continue
        found = driest_wait(system, below, above, spec)
        if found is None:
            continue
        air, wait = found
        if isinstance(wait.estimate, Working) and wait.estimate.number > own.to("min"):
            what = (
                f"{below.id} is overcoated after {own}; in the driest air of a job, {air}, its water takes about "
                f"{show_wait(wait.estimate.quantity)} (an estimate)"
            )
            yield Problem(("layers", below.id, "overcoat_interval"), what)
