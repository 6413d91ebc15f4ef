"""Each limit that a clause states, held against the job: coats, preparation, air, acceptance, hold points, service, warranty.

Called by `trace`.
"""

from __future__ import annotations

import re
from collections.abc import Iterator

from specgen.facts.contract.held import Ground, Held, Value, Verdict, verdict_of
from specgen.facts.contract.of_coats import held_by_coats
from specgen.facts.job.banned import bans_of_job, is_banned, name_of
from specgen.facts.job.criteria import criteria_of
from specgen.facts.job.inspected import film_points
from specgen.facts.pairs.floor import best_step, reaches
from specgen.model.acceptance import AcceptanceRule, InspectionPoint, Stage
from specgen.model.banned import Banned
from specgen.model.contract_document import ClauseLimit, MadeTo
from specgen.model.preparation import Preparation
from specgen.model.system import Corrosivity, Durability, System
from specgen.model.walk import Path
from specgen.units.locale import N_, phrase
from specgen.units.quantity import Range


def held_limits(limit: ClauseLimit, made: MadeTo, ground: Ground, clause: str = "") -> Iterator[Held]:
    """Every limit of a clause with what the job states for it, in the order of the model. `clause` are its words, which may ask for
    a notice beside what is limited."""
    yield from held_by_coats(limit, ground)
    yield from _banned(limit, ground)
    for preparation in ground.preparations:
        yield from _prepared(limit, preparation)
    yield from _air(limit, ground)
    yield from _accepted(limit, ground)
    yield from _stops(limit, ground, clause)
    yield from _service(limit, ground)
    if limit.warranty is not None:
        met = made.warranty >= limit.warranty if made.warranty is not None else None
        verdict = Verdict.NOT_ANSWERED if met is None else verdict_of(met)
        path = ("jobs", ground.job.id, "made_to", made.id, "warranty")
        yield Held(N_("Warranty period"), limit.warranty, made.warranty, path, verdict)


def _banned(limit: ClauseLimit, ground: Ground) -> Iterator[Held]:
    for ban in limit.banned:
        name = name_of(ban)
        asked = phrase("{substance}: none", substance=name)
        if ban.limit is not None:
            asked = phrase("{substance}: at most {limit}", substance=name, limit=ban.limit)
        products = {one.id: one for system in ground.systems for one in ground.spec.products_in(system)}
        free = True
        for product in products.values():
            path = ("products", product.id, "composition")
            if not product.composition:
                why = N_("the composition of the product is not stated")
                yield Held(_BANNED, asked, product.name, path, Verdict.NOT_TOLD, why)
                free = False
            elif any(is_banned(line, ban) for line in product.composition):
                # the maker keeps how much it is
                found = phrase("{product} contains it", product=product.name)
                yield Held(_BANNED, asked, found, path, Verdict.NOT_MET)
                free = False
        if products and free:
            found = phrase("no product contains {substance}", substance=name)
            yield Held(_BANNED, asked, found, ("products", next(iter(products)), "composition"), Verdict.MET)
        for system in ground.systems:
            if any(layer.product is None for layer in system.layers):
                yield _banned_in_the_offer(ban, asked, system, ground)


def _banned_in_the_offer(ban: Banned, asked: Value, system: System, ground: Ground) -> Held:
    """Where products are still to be offered: whether what is asked of them bans the substance as well."""
    for own, of in bans_of_job(ground.job, ground.spec):
        kept = own.limit is None or (ban.limit is not None and own.limit <= ban.limit)
        if own.substance.casefold() == ban.substance.casefold() and of in {None, system} and kept:
            at: Path = ("systems", system.id) if of is not None else ("jobs", ground.job.id)
            if own in ground.spec.project.banned:
                at = ("project",)
            return Held(
                _BANNED,
                asked,
                phrase("{substance} is banned in what is offered", substance=name_of(ban)),
                (*at, "banned", own.id),
                Verdict.MET,
            )
    return Held(_BANNED, asked, None, ("systems", system.id, "banned"), Verdict.NOT_ANSWERED)


_BANNED = N_("Banned substance")


def _prepared(limit: ClauseLimit, preparation: Preparation) -> Iterator[Held]:
    at = ("preparations", preparation.id)
    if limit.grade is not None:
        step = best_step(preparation)
        what = N_("Preparation grade")
        if step is None or step.grade is None:
            yield Held(what, limit.grade, None, (*at, "steps"), Verdict.NOT_ANSWERED)
        else:
            reached = reaches(step.grade, limit.grade)
            same = step.grade == limit.grade
            # the ladder across two series is common practice
            met = True if same else None if reached is None or not reached[1] else reached[0]
            why = N_("no published table ranks the two grades") if met is None else ""
            yield Held(what, limit.grade, step.grade, (*at, "steps", step.id, "grade"), verdict_of(met), why)
    if limit.profile is not None:
        step = next((one for one in preparation.steps if one.profile is not None), None)
        ours = step.profile if step is not None else None
        path = (*at, "steps", step.id, "profile") if step is not None else (*at, "steps")
        met = limit.profile.holds_all_of(ours) if ours is not None else None
        yield Held(N_("Surface profile"), limit.profile, ours, path, _or_open(met))
    for name, what in _CLEAN.items():
        asked, stated = getattr(limit, name), getattr(preparation, name)
        if asked is not None:
            met = stated <= asked if stated is not None else None
            yield Held(what, _shown(asked), None if stated is None else _shown(stated), (*at, name), _or_open(met))


_CLEAN = {
    "salt_limit": N_("Soluble salts, at most"),
    "dust_quantity": N_("Dust quantity rating, at most"),
    "dust_size": N_("Dust size class, at most"),
}


def _shown(value: Value | int) -> Value:
    return str(value) if isinstance(value, int) else value


def _or_open(met: bool | None) -> Verdict:
    return Verdict.NOT_ANSWERED if met is None else verdict_of(met)


_AIR = {
    "air": N_("Air temperature"),
    "surface": N_("Surface temperature"),
    "humidity": N_("Relative humidity"),
    "absolute_humidity": N_("Absolute humidity"),
    "dew_point_margin": N_("Surface above the dew point"),
}


def _air(limit: ClauseLimit, ground: Ground) -> Iterator[Held]:
    for name, what in _AIR.items():
        asked: Range | None = getattr(limit.climate, name, None)
        if asked is not None:
            stated: Range | None = getattr(ground.job.climate, name, None)
            met = asked.holds_all_of(stated) if stated is not None else None
            path = ("jobs", ground.job.id, "climate", name)
            yield Held(what, asked, stated, path, _or_open(met))


def _accepted(limit: ClauseLimit, ground: Ground) -> Iterator[Held]:
    if limit.acceptance is None:
        return
    job = ground.job
    rules = [
        (point, held.criterion.rule)
        for point in film_points(job)
        for held in criteria_of(point, job, ground.spec)
        if held.criterion.rule is not None
    ]
    what, asked = N_("Acceptance rule for DFT readings"), limit.acceptance
    others = [(point, rule) for point, rule in rules if rule is not asked]
    if not rules:
        yield Held(what, asked, None, ("jobs", job.id, "inspection"), Verdict.NOT_ANSWERED)
        return
    point, rule = (others or rules)[-1]
    if not others:
        verdict, why = Verdict.MET, ""
    elif len(others) < len(rules):
        # of which readings the clause speaks nobody can tell
        verdict, why = Verdict.NOT_TOLD, N_("at other points it is the rule asked for")
    elif rule is AcceptanceRule.OWN:
        # a rule of the job's own may be the stricter one
        verdict, why = Verdict.NOT_TOLD, N_("the job counts by a rule of its own")
    else:
        verdict, why = Verdict.NOT_MET, ""
    yield Held(what, asked, rule, ("jobs", job.id, "inspection", point.id, "criterion", "rule"), verdict, why)


def _stops(limit: ClauseLimit, ground: Ground, clause: str) -> Iterator[Held]:
    for stage in limit.hold_points:
        points = [point for point in ground.job.inspection if stage in _stages(point, ground)]
        stop = next((point for point in points if point.hold_point), None)
        at = ("jobs", ground.job.id, "inspection")
        what = N_("Hold point")
        if stop is not None:
            yield Held(what, stage, stop.check, (*at, stop.id), Verdict.MET)
        elif points:
            path = (*at, points[0].id, "hold_point")
            yield Held(what, stage, phrase("no hold point"), path, Verdict.NOT_MET)
        else:
            yield Held(what, stage, None, at, Verdict.NOT_ANSWERED)
    if limit.hold_points and _NOTICE.search(clause):
        # that the work stops tells nobody beforehand
        at, why = ("jobs", ground.job.id, "inspection"), N_("a person judges it")
        yield Held(N_("Notice of a hold point"), phrase("in its words"), None, at, Verdict.NOT_TOLD, why)


_NOTICE = re.compile(
    r"\bnotices?\b|\b(?:be|is|are|was|were|been|gets?) (?:told|notified|informed|invited|called)\b|\bnotif(?:y|ies|ication)\b|"
    r"\binforms?\b|\binvites?\b|\btells? the\b",
    re.IGNORECASE,
)


def _stages(point: InspectionPoint, ground: Ground) -> set[Stage]:
    """When a point falls; one that follows a coat falls during the work, and after the last coat once it is complete too."""
    if point.after is None:
        return {point.at} if point.at is not None else {Stage.COMPLETION}
    last = any(system.layers[-1].id == point.after for system in ground.systems)
    return {Stage.APPLICATION, Stage.COMPLETION} if last else {Stage.APPLICATION}


def _service(limit: ClauseLimit, ground: Ground) -> Iterator[Held]:
    """What the system is said to serve; of a harsher air for a shorter time, or the other way round, no order is published."""
    for system in ground.systems:
        claim = system.category
        steps = {}
        for name in _CLAIMED:
            asked, stated = getattr(limit, name), getattr(claim, name, None)
            if asked is not None and stated is not None:
                steps[name] = _rank(stated) - _rank(asked)
        crossed = min(steps.values(), default=0) < 0 < max(steps.values(), default=0)
        for name, what in _CLAIMED.items():
            asked, stated = getattr(limit, name), getattr(claim, name, None)
            if asked is None:
                continue
            path = ("systems", system.id, "category", name)
            verdict = _or_open(steps[name] >= 0 if name in steps else None)
            if crossed and verdict is Verdict.NOT_MET:
                yield Held(what, asked, stated, path, Verdict.NOT_TOLD, N_("the two categories are not ranked"))
            else:
                yield Held(what, asked, stated, path, verdict)


def _rank(word: Corrosivity | Durability) -> int:
    """Its place in the closed list, which stands in the order of what is asked for."""
    return [*type(word)].index(word)


_CLAIMED = {"corrosivity": N_("Corrosivity category"), "durability": N_("Durability")}
