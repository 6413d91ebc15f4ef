"""USE013 The thinner is the one that the product names

Checks
    Each coat that is thinned: where its product names a thinner, one of the thinners among the supplies of the job carries that name. A thinner that is ordered to thin with is the one that some product of the job names. So is the thinner that a scope, an inspection or a text between coats thins with. A supply that has no name of its own, as thinner for the primer, passes.
Why
    Another thinner throws the binder out, slows or stops the cure, or boils out of the film too fast: the paint gels, blushes or pinholes, and the data sheet no longer holds.
Passes
    jobs.refit.consumption.supplies: [{id: thin, what: "Thinner EX-900, 5 L", amount: 2 cans, kind: thinner, statements: [H226], safety_data_sheet: {number: SDS-9}}, {id: wipe, what: degreaser EX-7, amount: 2 L, kind: cleaner, statements: [H225], safety_data_sheet: {number: SDS-7}}]
    systems.chassis.layers.barrier.thinner: 10 %
    products.barrier.application.mixing.thinner_voc: 500 g/L

    jobs.refit.consumption.supplies: [{id: thin, what: thinner for the epoxy primer, amount: 2 L, kind: thinner, statements: [H226], safety_data_sheet: {number: SDS-9}}, {id: wipe, what: degreaser EX-7, amount: 2 L, kind: cleaner, statements: [H225], safety_data_sheet: {number: SDS-7}}]
    systems.chassis.layers.barrier.thinner: 10 %
    products.barrier.application.mixing.thinner_voc: 500 g/L
Fails
    jobs.refit.consumption.supplies: [{id: thin, what: thinner EX-100, amount: 2 L, kind: thinner, statements: [H226], safety_data_sheet: {number: SDS-9}}, {id: wipe, what: degreaser EX-7, amount: 2 L, kind: cleaner, statements: [H225], safety_data_sheet: {number: SDS-7}}]    # at jobs.refit.consumption.supplies
    systems.chassis.layers.barrier.thinner: 10 %
    products.barrier.application.mixing.thinner_voc: 500 g/L

    jobs.refit.consumption.supplies: [{id: thin, what: nitro thinner for the epoxy primer, amount: 2 L, kind: thinner, statements: [H226], safety_data_sheet: {number: SDS-9}}, {id: wipe, what: degreaser EX-7, amount: 2 L, kind: cleaner, statements: [H225], safety_data_sheet: {number: SDS-7}}]    # at jobs.refit.consumption.supplies
    systems.chassis.layers.barrier.thinner: 10 %
    products.barrier.application.mixing.thinner_voc: 500 g/L

    jobs.refit.consumption.supplies: [{id: thin, what: thinner EX-100, amount: 2 L, use: to thin the barrier coat, kind: thinner, statements: [H226], safety_data_sheet: {number: SDS-9}}, {id: wipe, what: degreaser EX-7, amount: 2 L, kind: cleaner, statements: [H225], safety_data_sheet: {number: SDS-7}}]    # at jobs.refit.consumption.supplies.thin.what

    jobs.refit.scope: Chassis frame, the barrier coat thinned with EX-100.    # at jobs.refit.scope
To put right
    Order the thinner of the product data sheet, or have the manufacturer agree to the other one and write it into the product.
"""

import re

from specgen.facts.job.instructions import instructions
from specgen.model.job import Supply, SupplyKind
from specgen.rules.kit import LOGIC, WARNING, Job, Problem, Problems, Product, Spec, date, rule

_SHARE = re.compile(r"\d+(?:[.,]\d+)? ?(?:%|L\b|l\b|litres?|gal\b|kg\b|cans?\b|tins?\b|drums?\b|parts?\b)")
_WORD = re.compile(r"[A-Za-z0-9][\w-]*")
# What a supply is said to be for is no name.
_NO_NAME = re.compile(
    r"thinner|thinners|thinning|thin|solvent|reducer|diluent|for|the|of|a|an|to|or|and|only|with|in|up|by|most|no"
    r"|number|type|grade|original|own|maker|makers|manufacturer|manufacturers|primer|primers|epoxy|epoxies"
    r"|polyurethane|alkyd|zinc|paint|paints|coat|coats|coating|topcoat|topcoats|finish|basecoat|clearcoat|clear|base"
    r"|enamel|lacquer|spray|spraying|airless|brush|summer|winter|fast|slow|medium|standard|data|sheet|guns|clean"
    r"|cleaning"
)
_FOR_THINNING = re.compile(r"\bthin(?:s|ned|ning)?\b|\bdilut\w*|\breduc(?:e|es|ed|ing)\b", re.I)
_THINNED_WITH = re.compile(
    r"\b(?:thin(?:ned|ning)?|diluted?|reduced?)\b[^.;,]{0,40}?\bwith ((?:\d+(?:\.\d+)? ?% (?:of )?)?[^.;,]+)", re.I
)
_DENIED = re.compile(r"\b(?:not|never|no)\b", re.I)


@rule("USE013", on=Job, severity=WARNING, source=LOGIC)
def thinner_of_the_product(job: Job, spec: Spec, on: date) -> Problems:
    supplies = job.consumption.supplies if job.consumption is not None else ()
    thinners = [entry for entry in supplies if entry.kind is SupplyKind.THINNER]
    thinned = {
        layer.product
        for system in spec.systems_of(job)
        for layer in system.layers
        if layer.thinner is not None and layer.thinner.base > 0
    }
    named = {product.id: (product, name) for product in spec.products_of(job) if (name := _thinner(product))}
    at, wrong = ("jobs", job.id, "consumption", "supplies"), False
    for product, name in named.values() if thinners else ():
        if product.id in thinned and not any(_may_be(entry, name) for entry in thinners):
            ordered, wrong = ", ".join(entry.what for entry in thinners), True
            what = f"{product.id} is thinned with {name}; the thinners among the supplies of {job.id} are: {ordered}"
            yield Problem(at, what, absolute=True)
    names = ", ".join(dict.fromkeys(name for _, name in named.values()))
    for entry in thinners if named and not wrong else ():
        to_thin = entry.use is not None and _FOR_THINNING.search(entry.use)
        if to_thin and not any(_may_be(entry, name) for _, name in named.values()):
            what = f"{entry.what} is ordered to thin with; the products of {job.id} are thinned with {names}"
            yield Problem((*at, entry.id, "what"), what, absolute=True)
    for path, text in instructions(job, spec):
        for match in _THINNED_WITH.finditer(text):
            said = _marks(match[1])
            if (
                named
                and said
                and not _DENIED.search(match[0])
                and not any(said & _marks(one) for _, one in named.values())
            ):
                what = f"{job.id} thins with {match[1].strip()}; its products are thinned with {names}"
                yield Problem(path, what, absolute=True)


def _thinner(product: Product) -> str | None:
    mixing = product.application.mixing if product.application is not None else None
    return mixing.thinner if mixing is not None else None


def _may_be(entry: Supply, name: str) -> bool:
    """True where a supply carries the name, has none, or the name is none that could be told from another."""
    wanted, offered = _marks(name), _marks(entry.what)
    own_words, words = _words(name), _words(entry.what)
    if wanted and offered:
        return bool(wanted & (offered | _marks(entry.order_number or "")))
    return bool(offered) or not words or not own_words or bool(words & own_words)


def _marks(text: str) -> set[str]:
    """What tells one thinner of a range from another: a number, a code, a capital letter."""
    found = _WORD.findall(_SHARE.sub("", text))
    return {word.lower() for word in found if any(sign.isdigit() for sign in word) or (word.isupper() and word != "A")}


def _words(text: str) -> set[str]:
    found = {word.lower() for word in _WORD.findall(_SHARE.sub("", text))}
    return {word for word in found if not _NO_NAME.fullmatch(word)}
