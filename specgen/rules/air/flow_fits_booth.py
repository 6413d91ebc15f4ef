"""AIR014 The air of a booth is changed as that of booths is

Checks
    A job done in a booth that states its room and its flow, and that no aerosol can is used on: the flow changes the air of the room 25 to 800 times an hour.
Why
    A booth moves its air at some 0.3 to 0.6 m/s over its length or height. A flow that does not do that, or does it many times over, has a slip in the flow or the room, and both stand behind every figure on the air the painter breathes.
Passes
    Given a job that states its spray air

    Given cans sprayed at a stated rate
Fails
    Given second good
    jobs.rails.workplace: booth
    jobs.rails.ventilation: {room: 100 m3, flow: 2400 m3/h, statement: booth with exhaust}    # at jobs.rails.ventilation.flow    # also AIR003 note at jobs.rails.ventilation    # also AIR003 note at jobs.rails.ventilation

    Given second good
    jobs.rails.workplace: booth
    jobs.rails.ventilation: {room: 100 m3, flow: 80100 m3/h, statement: booth with exhaust}    # at jobs.rails.ventilation.flow    # also AIR003 note at jobs.rails.ventilation    # also AIR003 note at jobs.rails.ventilation
To put right
    Compare both figures with the plate or the last measurement of the booth.
"""

from specgen.facts.usual import proportion
from specgen.model.application import Workplace
from specgen.model.product import PackForm
from specgen.rules.kit import PRACTICE, WARNING, Job, Problem, Problems, Spec, date, rule
from specgen.units.rounding import plain_text


@rule("AIR014", on=Job, severity=WARNING, source=PRACTICE)
def flow_fits_booth(job: Job, spec: Spec, on: date) -> Problems:
    air = job.ventilation
    if job.workplace is not Workplace.BOOTH or air is None or air.room is None or air.flow is None:
        return
    if any(product.pack.form is PackForm.AEROSOL for product in spec.paints_of(job)):
        return
    changes = air.flow.to("m3/h") / air.room.to("m3")
    least, most = proportion("booth_changes_least"), proportion("booth_changes_most")
    if not least <= changes <= most:
        what = f"{air.flow} in a booth of {air.room} is {plain_text(round(changes, 1))} air changes an hour; {least} to {most} are usual"
        yield Problem(("ventilation", "flow"), what)
