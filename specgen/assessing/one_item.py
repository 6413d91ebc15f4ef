"""The verdict on one item at one inspection point, with reasons, what to measure next and what to do. Called by `assessment`."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from itertools import pairwise

from specgen.assessing.air_of_days import days_without_air
from specgen.assessing.answer import Answer
from specgen.assessing.beneath import Means
from specgen.assessing.cells import has_time, is_word
from specgen.assessing.conceded import COUNTS, Film, Grants, outside, under
from specgen.assessing.faults import Faults
from specgen.assessing.film import short_of
from specgen.assessing.looked_at import answers, zinc_answers
from specgen.assessing.records import Record
from specgen.assessing.results import AirRead, At, BatchUsed, Done, LessBefore, Lot, Reason
from specgen.assessing.wording import names, reason_text, walk_text
from specgen.facts.job.concessions import Eased
from specgen.facts.job.zinc_beneath import zinc_asked
from specgen.facts.layer.called import coat_called
from specgen.model.acceptance import AcceptanceRule, InspectionPoint, SampledUnit
from specgen.model.concession import Concession
from specgen.model.job import Item
from specgen.model.system import System
from specgen.trade.film_acceptance import Fault
from specgen.trade.verdict import Verdict, together
from specgen.units.display import show
from specgen.units.locale import N_, listed, phrase


class Judge:
    """The verdict on one item at one point."""

    def __init__(self, point: InspectionPoint, item: Item, system: System, grants: Grants, faults: Faults) -> None:
        self._point, self._item, self._system = point, item, system
        self._job, self._spec, self._grants, self._faults = grants.job, grants.spec, grants, faults
        self._under: list[Concession] = []

    def film(
        self,
        lots: tuple[Lot, ...],
        less: LessBefore | None,
        said: Sequence[Record],
        by: str,
        *,
        repaired: Sequence[str] = (),
        doubts: Iterable[str] = (),
    ) -> At:
        """The lots that hold the item: its own spots, and what is judged of the lot as a whole; then the words of an own rule,
        which are figures too where they ask for a film by difference.

        `repaired` are spots that were repaired and not read since; `doubts` say why the gauge does not bear its readings.
        """
        mine = tuple(lot for lot in lots if self._item.id in lot.items)
        verdicts: list[Verdict] = []
        reasons: list[str] = []
        next_: list[str] = []
        if not any(spot.item == self._item.id for lot in mine for spot in lot.spots):
            verdicts.append(Verdict.NOT_DECIDED)
            reasons.append(phrase(N_("no film was read on this item")))
            next_.append(phrase(N_("read the film of {item} at this point"), item=self._item.id))
        for lot in mine:
            self._of_lot(lot, verdicts, reasons, next_)
        if repaired:
            verdicts.append(Verdict.NOT_DECIDED)
            reasons.append(phrase(N_("repaired and not read again: {spots}"), spots=names(repaired)))
            next_.append(phrase(N_("read the film again where it was repaired")))
        if (text := self._parts_missing(mine)) is not None:
            verdicts.append(Verdict.NOT_DECIDED)
            reasons.append(text)
        for name, read, asked in short_of(lots, self._point, self._job, self._spec):
            verdicts.append(Verdict.NOT_DECIDED)
            text = (
                N_("spots read in all: {read}; required: {asked}")
                if name == "spots"
                else N_("readings taken in all: {read}; required: {asked}")
            )
            reasons.append(phrase(text, read=read, asked=asked))
        for doubt in doubts:
            verdicts.append(Verdict.NOT_DECIDED)
            reasons.append(doubt)
            next_.append(
                phrase(N_("check the gauge, record it with its serial number, and read again where it was off"))
            )
        if less is not None:
            verdicts.append(less.verdict)
            reasons += less.reasons
            if less.alone:
                next_.append(phrase(N_("call a spot by the same name each time it is read")))
        ways = [(name, way.spots) for lot in mine for name, way in lot.walks.items() if way.spots]
        walked_out = [(name, spots) for name, spots in ways if name.startswith(f"{self._item.id} ")]
        if walked_out and Verdict.NOT_CONFORMING not in verdicts:
            verdicts.append(Verdict.NOT_DECIDED)
            text = N_("spots measured outwards are outside the limits: {places}; no area here does not conform")
            reasons.append(phrase(text, places=", ".join(f"{name} ({count})" for name, count in walked_out)))
        # what the criterion says in words no figure answers, but for a difference
        if self._point.criterion.text is not None:
            by = _names((by, self._words(said, verdicts, reasons, next_, less.verdict if less is not None else None)))
        elif said:
            by = _names((by, self._beside_figures(said, verdicts, reasons)))
        return self._at(verdicts, reasons, next_, lots=mine, said_by=by, less=less)

    def _parts_missing(self, lots: tuple[Lot, ...]) -> str | None:
        """Where each part is to be read: that fewer parts are told apart in the rows than there are."""
        plan = self._point.sampling
        if plan is None or plan.per is not SampledUnit.PART or self._item.count < 2:
            return None
        parts = {spot.part for lot in lots for spot in lot.spots if spot.item == self._item.id and spot.part}
        if len(parts) >= self._item.count:
            return None
        text = N_("each part is to be read: parts read {read}, of {count}")
        return phrase(text, read=len(parts), count=self._item.count)

    def climate(
        self, air: tuple[AirRead, ...], said: Sequence[Record], work: Sequence[Done], batches: Sequence[BatchUsed]
    ) -> At:
        """Air of every coat on the item on each day it was applied, each moment within every limit."""
        here = (read for read in air if read.record.text("point") in {"", self._point.id})
        mine = [read for read in here if read.item in {"", self._item.id}]
        coats = {read.coat for read in mine}
        lacking = [coat_called(layer, self._system) for layer in self._system.layers if layer.id not in coats]
        verdicts: list[Verdict] = [Verdict.CONFORMING] if mine else []
        reasons: list[str] = []
        next_: list[str] = []
        for read in mine:
            for missed, (name, found) in zip(read.missed, read.outside, strict=True):
                when = read.record.text("on")
                told = phrase(N_("{when}: {what}"), when=when, what=phrase(missed)) if when else missed
                granted = self._grants.of_rows([read.record]).air(name, found, self._item, read.coat)
                verdicts.append(Verdict.NOT_CONFORMING if granted is None else Verdict.CONCEDED)
                reasons.append(told if granted is None else self._accepted(told, *granted))
            if not read.complete:
                verdicts.append(Verdict.NOT_DECIDED)
                reasons.append(
                    phrase(N_("row {row}: air, humidity and surface are not all there"), row=read.record.row)
                )
        if lacking:
            verdicts.append(Verdict.NOT_DECIDED)
            reasons.append(
                phrase(N_("no air is recorded for the coats: {coats}"), coats=listed("{first}, {more}", lacking))
            )
        coated = {layer.id: coat_called(layer, self._system) for layer in self._system.layers}
        for when in (*days_without_air(self._item, coated, mine, work, batches), *self._gaps(mine)):
            verdicts.append(Verdict.NOT_DECIDED)
            reasons.append(when)
        answered = list(self._answers(said))
        self._held_against(answered, together(verdicts) if mine else None, reasons)
        verdicts += [answer.verdict for answer in answered]
        reasons += [answer.why for answer in answered if answer.why]
        by = _names((*(read.record.text("by") for read in mine), *(answer.by for answer in answered)))
        return self._at(verdicts, reasons, next_, said_by=by)

    def _gaps(self, air: Sequence[AirRead]) -> Iterator[str]:
        """Longer times between two records of a day than the sampling of the point allows, while one coat is applied."""
        every = self._point.sampling.every if self._point.sampling is not None else None
        if every is None:
            return
        timed = sorted((read.coat, read.on) for read in air if read.on is not None and has_time(read.record.text("on")))
        for (coat, before), (next_coat, after) in pairwise(timed):
            minutes = (after - before).total_seconds() / 60
            if coat == next_coat and before.date() == after.date() and minutes > every.to("min"):
                text = N_("{day}: no air is recorded between {before} and {after}; required: every {every}")
                times = {"before": f"{before:%H:%M}", "after": f"{after:%H:%M}"}
                yield phrase(text, day=before.date().isoformat(), every=show(every), **times)

    def zinc(self, zinc: Means, said: Sequence[Record]) -> At:
        """The zinc of every part; what else the criterion asks for is not in figures, and is left to whoever measured."""
        words = [record for record in said if is_word(record.text("value"))]
        answered = list(zinc_answers(self._point, self._item, zinc, [one for one in said if one not in words]))
        verdicts = [answer.verdict for answer in answered]
        reasons = [answer.why for answer in answered if answer.why]
        next_: list[str] = []
        by = self._words(words, verdicts, reasons, next_, together(verdicts) if zinc_asked(self._point) else None)
        return self._at(verdicts, reasons, next_, said_by=_names((*(answer.by for answer in answered), by)))

    def looked_at(self, said: Sequence[Record]) -> At:
        """What a test or a person says of the item."""
        verdicts: list[Verdict] = []
        reasons: list[str] = []
        next_: list[str] = []
        by = self._words(said, verdicts, reasons, next_)
        return self._at(verdicts, reasons, next_, said_by=by)

    def _words(
        self,
        said: Sequence[Record],
        verdicts: list[Verdict],
        reasons: list[str],
        next_: list[str],
        figures: Verdict | None = None,
    ) -> str:
        """What persons and tests say; `figures` are what readings say of the same words, which then need nobody's."""
        answered = list(self._answers(said))
        tested = [answer.verdict for answer in answered if answer.word is None]
        held = [*tested, *([figures] if figures is not None else [])]
        self._held_against(answered, together(held) if held else None, reasons)
        verdicts += [answer.verdict for answer in answered]
        reasons += [answer.why for answer in answered if answer.why]
        if not answered and figures is None:
            verdicts.append(Verdict.NOT_DECIDED)
            reasons.append(phrase(N_("nobody has recorded whether the words of the criterion are met")))
            next_.append(
                phrase(N_("enter conforming or not conforming at this point, with the name of who assessed it"))
            )
        return _names(answer.by for answer in answered)

    def _beside_figures(self, said: Sequence[Record], verdicts: list[Verdict], reasons: list[str]) -> str:
        """A word where figures alone decide: what somebody found wrong counts, an acceptance adds nothing."""
        answered = list(self._answers(said))
        self._held_against(answered, together(verdicts), reasons)
        against = [answer for answer in answered if answer.verdict is Verdict.NOT_CONFORMING]
        verdicts += [answer.verdict for answer in against]
        reasons += [answer.why for answer in against if answer.why]
        return _names(answer.by for answer in against)

    def _held_against(self, answered: Sequence[Answer], figures: Verdict | None, reasons: list[str]) -> None:
        """Tells a word that says the opposite of the figures: it is not taken for them."""
        opposite = {
            Verdict.NOT_CONFORMING: (
                Verdict.CONFORMING,
                N_("{who} recorded conforming, the figures say not conforming: the figures decide"),
            ),
            Verdict.CONFORMING: (
                Verdict.NOT_CONFORMING,
                N_("{who} recorded not conforming, the figures say conforming: somebody has to look again"),
            ),
        }
        if figures not in opposite:
            return
        word, text = opposite[figures]
        for answer in answered:
            if answer.word is None or answer.verdict is not word:
                continue
            reasons.append(phrase(text, who=answer.by or "?"))
            what = f"{answer.word.text('value')} is recorded; the figures at {self._point.id} say {figures.value}"
            self._faults.tell("RDG017", what, answer.word.place("value"), point=self._point.id, item=self._item.id)

    def _answers(self, said: Sequence[Record]) -> Iterator[Answer]:
        mine = [record for record in said if record.text("item") in {"", self._item.id}]
        for answer in answers(self._point, mine, self._item, self._grants, self._faults):
            if answer.under is not None:
                self._under.append(answer.under)
            yield answer

    def _accepted(self, said: str, concession: Concession, limit: Eased) -> str:
        """A reason that a concession covers; the concession is kept as used."""
        self._under.append(concession)
        return under(said, concession, limit)

    def _of_film(self, lot: Lot, reason: Reason, film: Film | None) -> tuple[Verdict, str]:
        """One reason of a lot as it concerns the item, and the concession that covers it, if one does."""
        said = _in_area(lot, reason_text(reason, lot.unit))
        verdict = Verdict.NOT_CONFORMING if reason.decides else Verdict.NOT_DECIDED
        by = film.of(reason.fault) if film is not None and reason.fault not in COUNTS else ()
        if film is None or not by:
            return verdict, said
        left = [one for one in film.judged.reasons if film.of(one.fault) == by]
        if not left:
            for concession, limit in by:
                said = self._accepted(said, concession, limit)
            return Verdict.CONCEDED, said
        return verdict, outside(said, *by[0])

    def _of_lot(self, lot: Lot, verdicts: list[Verdict], reasons: list[str], next_: list[str]) -> None:
        mine = {spot.name for spot in lot.spots if spot.item == self._item.id}
        if lot.judged is None:
            verdicts.append(Verdict.NOT_DECIDED)
            reasons.append(lot.why)
            return
        concerned, before = [], len(verdicts)
        film = self._grants.film(lot, self._item)
        for reason in lot.judged.reasons:
            if reason.fault is Fault.NOTHING_READ:
                continue  # told of the item already
            whole = not reason.at or reason.fault is Fault.MANY_BELOW
            if not whole and mine.isdisjoint(reason.at):
                continue
            concerned.append(reason)
            verdict, said = self._of_film(lot, reason, film)
            reasons.append(said)
            verdicts.append(verdict)
        if lot.why:
            reasons.append(lot.why)
            verdicts.append(Verdict.NOT_DECIDED)
        if not concerned and mine:
            verdicts.append(Verdict.CONFORMING)
        steps = _next(lot, concerned_decide=Verdict.NOT_CONFORMING in verdicts[before:])
        next_.extend(_in_area(lot, step) for step in steps)

    def _at(
        self,
        verdicts: list[Verdict],
        reasons: list[str],
        next_: list[str],
        *,
        lots: tuple[Lot, ...] = (),
        said_by: str = "",
        less: LessBefore | None = None,
    ) -> At:
        if self._faults.spoils(self._point.id, self._item.id):
            verdicts.append(Verdict.NOT_DECIDED)
            reasons.append(phrase(N_("rows that may belong here could not be used; see the findings")))
        verdict = together(verdicts)
        put_right = self._point.if_failed or "" if verdict is Verdict.NOT_CONFORMING else ""
        if verdict is Verdict.NOT_CONFORMING and not put_right:
            put_right = phrase(N_("the job states no corrective action for this point; ask who owns the document"))
        return At(
            point=self._point,
            item=self._item,
            verdict=verdict,
            reasons=tuple(dict.fromkeys(reasons)),
            next=tuple(dict.fromkeys(next_)),
            put_right=put_right,
            lots=lots,
            said_by=said_by,
            less=less,
            conceded=tuple(dict.fromkeys(self._under)),
        )


def _names(persons: Iterable[str]) -> str:
    return ", ".join(dict.fromkeys(name for name in persons if name))


def _in_area(lot: Lot, said: str) -> str:
    return phrase(N_("area {area}: {reason}"), area=lot.name, reason=said) if lot.name else said


def _next(lot: Lot, *, concerned_decide: bool) -> Iterator[str]:
    """What to measure: what is short, and how far an area that does not conform goes."""
    read, least = lot.area, lot.least
    if least.spots is not None and len(read.spots) < least.spots:
        yield phrase(N_("read {count} more spots"), count=least.spots - len(read.spots))
    elif least.readings is not None and read.count < least.readings:
        yield phrase(N_("take {count} more readings"), count=least.readings - read.count)
    if not concerned_decide:
        return
    if lot.criterion.rule is AcceptanceRule.PA_2 and not lot.walks:
        yield walk_text()
    for direction, way in lot.walks.items():
        if way.closed:
            text = N_("{direction}: the area that does not conform reaches {count} spots outwards")
        else:
            text = N_("{direction}: {count} spots outwards do not conform and the end is not found; measure on")
        yield phrase(text, direction=direction, count=way.spots)
