"""INS026 What fails an inspection is put right before work goes on

Checks
    The corrective action of each inspection point: it does not accept what failed, leave it as it is, merely write it down, or go on and tell somebody later; nor does it shift the fault elsewhere: to another place or part, a lower limit or test voltage, a thicker coat above, the time after delivery, or the judgement of whoever did the work. Where the ambient conditions are outside their limits, work waits or the air is changed: wiping the part dry is neither. An action that stops, asks, repeats or waits for a decision in writing is accepted.
Why
    A hold point whose failure changes nothing is no hold point: the next coat goes over the fault, and afterwards it can only be found by stripping.
Passes
    jobs.refit.inspection.primer-film.if_failed: "Accept only with a written concession of the customer."

    jobs.refit.inspection.primer-film.if_failed: "Do not go on; abrade and coat again."

    jobs.refit.inspection.primer-film.if_failed: "Stop, and carry on once the surface is dry."

    jobs.refit.inspection.primer-film.if_failed: "Lower the pressure; read two more places; strip if they are thin too."

    jobs.refit.inspection.primer-film.if_failed: "Let it cure longer, test again at another place and repair the first."

    jobs.refit.inspection.primer-film.if_failed: "The area is abraded, and work may continue."

    jobs.refit.inspection.primer-film.if_failed: "Coat thin places again; places that pass need not be coated."

    jobs.refit.inspection.climate: {id: climate, check: Climate at the part, at: during-application, criterion: {text: inside the limits}, if_failed: Heat the booth and go on.}

    jobs.refit.inspection.climate: {id: climate, check: Climate at the part, at: during-application, criterion: {text: inside the limits}, if_failed: Correct the humidity and go on.}

    jobs.refit.inspection.climate: {id: climate, check: Climate at the part, at: during-application, criterion: {text: inside the limits}, if_failed: "Stop; wipe the part dry and go on once the limits are met."}
Fails
    jobs.refit.inspection.primer-film.if_failed: Thin places need not be coated again.    # at jobs.refit.inspection.primer-film.if_failed

    jobs.refit.inspection.primer-film.if_failed: Make the next coat thicker.    # at jobs.refit.inspection.primer-film.if_failed

    jobs.refit.inspection.primer-film.if_failed: Test another place.    # at jobs.refit.inspection.primer-film.if_failed

    jobs.refit.inspection.primer-film.if_failed: None.    # at jobs.refit.inspection.primer-film.if_failed

    jobs.refit.inspection.primer-film.if_failed: Accept as it is.    # at jobs.refit.inspection.primer-film.if_failed

    jobs.refit.inspection.primer-film.if_failed: "Carry on and tell the inspector later."    # at jobs.refit.inspection.primer-film.if_failed

    jobs.refit.inspection.primer-film.if_failed: Note in the record.    # at jobs.refit.inspection.primer-film.if_failed

    jobs.refit.inspection.primer-film.if_failed: "Nothing to do; the next coat covers it."    # at jobs.refit.inspection.primer-film.if_failed

    jobs.refit.inspection.climate: {id: climate, check: Climate at the part, at: during-application, criterion: {text: inside the limits}, if_failed: "Wipe the part with a cloth and go on; the primer bears a damp surface."}    # at jobs.refit.inspection.climate.if_failed    # also JOB018 at jobs.refit.inspection.climate.if_failed

    jobs.refit.inspection.climate: {id: climate, check: Climate at the part, at: during-application, criterion: {text: inside the limits}, if_failed: The heaters are out; go on.}    # at jobs.refit.inspection.climate.if_failed
To put right
    State what is done to the part, who decides where it cannot be done, and that work waits for the decision.
"""

from specgen.facts.job.goes_on import evades, lets_stand, works_on_in_the_same_air
from specgen.facts.job.looked_for import CLIMATE, words_of
from specgen.rules.kit import PRACTICE, WARNING, Job, Problem, Problems, Spec, date, rule


@rule("INS026", on=Job, severity=WARNING, source=PRACTICE)
def failure_put_right(job: Job, spec: Spec, on: date) -> Problems:
    for point in job.inspection:
        text = point.if_failed
        if text is None:
            continue
        stands = works_on_in_the_same_air if CLIMATE.search(words_of(point)) else lets_stand
        if stands(text) or evades(text):
            what = f"what fails {point.id} is not put right: {text}"
            yield Problem(("inspection", point.id, "if_failed"), what)
