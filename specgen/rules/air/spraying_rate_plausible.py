"""AIR007 The quantity sprayed per hour fits the work

Checks
    Where a job that is painted from cans states the quantity sprayed per hour: at this rate, pauses included, one cross coat on one part leaves no longer pause than the longest flash-off time between cross coats, even from a slow can; and it is no more than one can dispenses without a pause (table spray_rates).
Why
    The air flow and the re-entry time are calculated from this figure. If it is set too low, the ventilation is too weak for what is really sprayed.
Passes
    Given cans sprayed at a stated rate

    Given cans sprayed at a stated rate
    jobs.refit.ventilation.spraying_rate: 1500 g/h
Fails
    Given cans sprayed at a stated rate
    jobs.refit.ventilation.spraying_rate: 250 g/h    # at jobs.refit.ventilation.spraying_rate

    Given cans sprayed at a stated rate
    jobs.refit.ventilation: {room: 140 m3, flow: 26000 m3/h, spraying_rate: 4400 g/h, mixing: 3}    # at jobs.refit.ventilation.spraying_rate
To put right
    Weigh what is sprayed in an hour of real work, pauses included, and state that.
"""

from fractions import Fraction

from specgen.facts.job.spraying_time import cross_coat_time, flash_of
from specgen.model.product import PackForm
from specgen.rules.kit import PRACTICE, WARNING, Job, Problem, Problems, Quantity, Spec, date, rule, show, table
from specgen.trade.working import Working


@rule("AIR007", on=Job, severity=WARNING, source=PRACTICE)
def spraying_rate_plausible(job: Job, spec: Spec, on: date) -> Problems:
    rate = job.ventilation.spraying_rate if job.ventilation is not None else None
    if rate is None or any(product.pack.form is not PackForm.AEROSOL for product in spec.paints_of(job)):
        return
    path, row = ("ventilation", "spraying_rate"), table("spray_rates").row("id", "aerosol")
    slow, fast = (
        Quantity.of("release_rate", Fraction(row[column]), "g/s").to("g/h") for column in ("low_g_s", "high_g_s")
    )
    if rate.to("g/h") > fast:
        what = (
            f"{rate} is more than one can dispenses without a pause, {show(Quantity.of('release_rate', fast, 'g/h'))}"
        )
        yield Problem(path, what)
        return
    longest: tuple[Quantity, str] | None = None
    for item in job.items:
        system = spec.system_of(job, item)
        for layer in system.layers if system is not None else ():
            flash = flash_of(layer, spec.product_of(layer))
            time = cross_coat_time(job, item, system, layer, spec) if system is not None else None
            if flash is None or flash.high is None or not isinstance(time, Working):
                continue
            # what is left of the time once a slow can has sprayed the cross coat
            pause = Quantity.of("duration", time.number * (1 - min(Fraction(1), rate.to("g/h") / slow)), "min")
            if pause > flash.high and (longest is None or pause > longest[0]):
                longest = pause, f"{layer.id} on one {item.id}; its flash-off time is at most {flash.high}"
    if longest is not None:
        what = f"at {rate} there are pauses of {show(longest[0])} between cross coats of {longest[1]}"
        yield Problem(path, what)
