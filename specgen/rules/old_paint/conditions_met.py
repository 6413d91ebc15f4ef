"""OLD014 Conditions set by the existing coating are met in the job

Checks
    The first new coat over the outermost existing coat where the tables accept it on conditions: abraded, degreased, sound, through-dry, another coat between. The patch test has its own rule.
Why
    The pair is accepted on these conditions only: no paint adheres to a stoved finish that is not abraded.
Passes
    jobs.refit.items.DOOR.old_coats: [{id: factory, family: oem_finish, thickness: 110 um}]

    jobs.refit.items.DOOR.old_coats: [{id: factory, family: oem_finish, thickness: 110 um, sound: yes, cured: yes}]

    jobs.refit.items.DOOR.old_coats: [{id: factory, family: oem_finish, thickness: 110 um}]
    preparations.sand-steel.steps.strip: {id: strip, do: strip, text: Strip to the metal.}
Fails
    jobs.refit.items.DOOR.old_coats: [{id: factory, family: oem_finish, thickness: 110 um}]    # at jobs.refit.items.DOOR.old_coats.factory
    preparations.wipe: {id: wipe, title: Wipe, steps: [{id: degrease, do: degrease, text: Wipe with degreaser., acceptance: A white cloth stays white.}], coat_within: 4 h}
    jobs.refit.items.DOOR.preparation: wipe

    Given second good
    jobs.rails.items.LOCKER.old_coats.later: {id: later, family: oem_finish, thickness: 3 mil, sound: yes}
    preparations.abrade.steps.feather: {id: feather, do: degrease, text: Degrease.}
    preparations.abrade.steps.sand: {id: sand, do: test, text: Look., grade: P Ma, acceptance: No gloss.}    # at jobs.rails.items.LOCKER.old_coats.later    # also PRE008 at preparations.abrade.steps    # also REP004 at jobs.rails.items.LOCKER.repair.feather    # also REP004 at jobs.rails.items.LOCKER.repair.sanded

    jobs.refit.items.STEP.old_coats: [{id: house, family: oil_alkyd, thickness: 60 um}]
    jobs.refit.items.STEP.patch_test: {result: pass, limit: no lifting in 48 h}    # at jobs.refit.items.STEP.old_coats.house    # also OLD016 at jobs.refit.items.STEP.old_coats.house.lead
To put right
    Put the condition into the preparation, and state what was found on the existing coat.
"""

from specgen.facts.pairs.old_paint import MADE_FOR_METAL, answered, top_pairs
from specgen.facts.pairs.overcoat import Verdict, in_words, overcoating
from specgen.facts.pairs.papers import papers_on_old_paint
from specgen.rules.kit import PRACTICE, WARNING, Concern, Job, Problem, Problems, Spec, date, rule

# What only a test patch or the interval of a fresh coat could answer is not required of the preparation here.
_ELSEWHERE = {"patch_test", "in_window", "thin_film", "min_preparation", "baked_only"}
_ITSELF = {"powder", "bituminous"}


@rule(
    "OLD014",
    on=Job,
    severity=WARNING,
    concern=Concern.PREPARATION,
    source=overcoating("epoxy_2k", "powder").citation,
)
def conditions_met(job: Job, spec: Spec, on: date) -> Problems:
    for pair in top_pairs(job, spec):
        if pair.verdict.verdict is not Verdict.CONDITIONAL or pair.old.family in _ITSELF or pair.bare_electrocoat:
            continue
        if pair.new.family in MADE_FOR_METAL:
            continue
        met = answered(pair, job, spec)
        open_needs = [choice for choice in pair.verdict.needs if not set(choice) & (met | _ELSEWHERE)]
        if not open_needs:
            continue
        remedy = in_words(open_needs, papers_on_old_paint(pair.old.family, pair.new.layer.role))
        what = f"{pair.sentence()}; not in the job: {in_words(open_needs)}"
        source = PRACTICE if pair.verdict.from_ladder else pair.verdict.citation
        yield Problem(pair.old.path, what, remedy, source=source, absolute=True)
