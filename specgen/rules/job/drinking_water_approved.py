"""JOB016 What touches drinking water or food is approved for it

Checks
    Each job whose scope, or whose systems by title or use, speak of drinking water, potable water or food in touch with the coat: the scope, a product (its name, description, claims or texts), a system or an inspection point names the approval, certificate or list, and no coat of such a system holds coal tar or bitumen. What is said of another place, or denied, is not read.
Why
    A lining for ballast water lets solvent and amine into drinking water for months; the authority has it blasted off.
Passes
    jobs.refit.scope: Doors and step, away from the drinking water tank.

    jobs.refit.scope: Inside of a drinking water tank; the lining is certified for drinking water.
Fails
    jobs.refit.scope: Inside of a drinking water tank.    # at jobs.refit.scope

    products.barrier.binder: coal_tar_epoxy
    jobs.refit.scope: Inside of a drinking water tank; the lining is certified for drinking water.    # at jobs.refit.scope

    Given second good
    jobs.rails.scope: Silos inside, for grain and other food.    # at jobs.rails.scope
To put right
    Choose a product that is approved for it, claim it with its certificate, and let the cure and the washing before the first filling be inspected.
"""

import re
from collections.abc import Iterator

from specgen.facts.pairs.families import binder_family
from specgen.facts.texts import CLAUSE, texts
from specgen.rules.kit import PRACTICE, WARNING, Job, Problem, Problems, Product, Spec, date, rule

_TARRED = {"coal_tar_epoxy", "bituminous"}
_TOUCHED = re.compile(
    r"\b(?:drinking|potable)[- ]water(?! (?:works|supply|main\w* are|line is))\b|\bfor (?:\w+ ){0,3}?(?:food|foodstuffs?|milk|beer|wine)\b|\bfood contact\b",
    re.I,
)
_OTHER = re.compile(r"\b(?:not|no|never|away|near|beside|next to|wash\w*|rins\w*|clean\w*|outside|instead)\b", re.I)
_APPROVED = re.compile(
    r"approv|certif|listed|licen[cs]|permit(?:ted)? for|suitable|complies|test report|hygien|guideline|regulation|EN 1186|NSF|ACS|WRAS",
    re.I,
)


@rule("JOB016", on=Job, severity=WARNING, source=PRACTICE)
def drinking_water_approved(job: Job, spec: Spec, on: date) -> Problems:
    told = next((clause.strip() for clause in CLAUSE.split(job.scope) if _touches(clause)), None)
    if told is None:
        told = next(
            (text for one in spec.systems_of(job) for text in (one.title, one.use or "") if _touches(text)), None
        )
    if told is None:
        return
    tarred = next((one for one in _touching(job, spec) if one.binder in _TARRED), None)
    if tarred is not None:
        what = f"{job.id} speaks of '{told}', and {tarred.id} is {binder_family(tarred.binder)['name']}, which gives tar to water and food"
        yield Problem(("scope",), what, "Choose a coat without tar.")
    if any(_APPROVED.search(text) and _TOUCHED.search(text) for text in _said(job, spec)):
        return
    yield Problem(("scope",), f"{job.id} speaks of '{told}', and nothing says that its coats are approved for it")


def _touches(clause: str) -> bool:
    return _TOUCHED.search(clause) is not None and _OTHER.search(clause) is None


def _touching(job: Job, spec: Spec) -> Iterator[Product]:
    """Paint of the systems that say so; where the scope alone does, of all."""
    systems = [one for one in spec.systems_of(job) if _touches(one.title) or _touches(one.use or "")]
    for system in systems or spec.systems_of(job):
        for layer in system.layers:
            yield spec.product_of(layer)


def _said(job: Job, spec: Spec) -> Iterator[str]:
    for record in (job, *spec.systems_of(job), *spec.products_of(job)):
        yield from (text for _, text, _ in texts(spec, record))
