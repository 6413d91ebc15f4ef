"""What a product may go on and over, and when the next coat may follow: only what product data say.

Called by `data_sheet`.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from specgen.documents.data_sheet.by_air import Timed, by_air
from specgen.documents.parts.tables import TableView
from specgen.documents.parts.wording import Words
from specgen.model.drying import Drying, OvercoatWindow, SandableAfter
from specgen.model.product import Product
from specgen.model.spec import Spec

# What an overcoat window may name instead of a product.
_ITSELF, _ANY = "itself", "any"


def times_table(product: Product, spec: Spec, words: Words) -> TableView:
    """The stages of drying, when the film may be sanded, and when the next coat may follow.

    Conditions that all times of drying share stand in the caption.
    """
    stated: list[tuple[str, Drying | SandableAfter]] = [(words.word(one.stage), one) for one in product.drying]
    stated += [(words.word(one.sanding), one) for one in product.sandable_after]
    under = {words.conditions(one.humidity, one.film) for _, one in stated}
    shared = under.pop() if len(under) == 1 else None
    times = [
        Timed(
            name=_stage(name, "" if shared is not None else words.conditions(one.humidity, one.film)),
            air=one.air,
            time=words.phrase(one.time),
        )
        for name, one in stated
    ]
    times += _intervals([(_overcoated(window, product, spec, words), window) for window in product.overcoat], words)
    captions = (
        (words("Drying times at {}").format(shared) if shared else words("Drying times")) if stated else "",
        words("overcoating intervals, from the end of the last cross coat") if product.overcoat else "",
    )
    caption = "; ".join(part for part in captions if part)
    return by_air(caption[:1].upper() + caption[1:], words("Stage or interval"), times, words)


def if_exceeded(product: Product, spec: Spec, words: Words) -> tuple[tuple[str, str], ...]:
    """What is done past the maximum interval, as (name, finished text), each act once; it names its coats where acts differ."""
    return _past([(_next(w, product, spec, words), w.if_exceeded) for w in product.overcoat], words)


def over_table(product: Product, spec: Spec, words: Words) -> TableView:
    """Which products name this one as their next coat, and when they take it."""
    times = _intervals([(other.name, window) for other, window in _below(product, spec)], words)
    caption = words("Coats that may be overcoated with this product, and their intervals")
    return by_air(caption, words("Coat below"), times, words)


def if_exceeded_below(product: Product, spec: Spec, words: Words) -> tuple[tuple[str, str], ...]:
    """The same for the coats below."""
    return _past([(other.name, window.if_exceeded) for other, window in _below(product, spec)], words)


def _below(product: Product, spec: Spec) -> Iterator[tuple[Product, OvercoatWindow]]:
    for other in spec.products.values():
        for window in other.overcoat:
            if window.next_coat == product.id and other.id != product.id:
                yield other, window


def _past(stated: Sequence[tuple[str, str | None]], words: Words) -> tuple[tuple[str, str], ...]:
    acts: dict[str, list[str]] = {}
    for name, act in stated:
        acts.setdefault(act or words("not stated"), []).append(name)
    if not any(act for _, act in stated):
        return ()
    head = words("If the maximum is exceeded")
    if len(acts) == 1:
        return tuple((head, act) for act in acts)
    return tuple((f"{head} ({', '.join(dict.fromkeys(names))})", act) for act, names in acts.items())


def _stage(name: str, under: str) -> str:
    return name[:1].upper() + name[1:] + (f", {under}" if under else "")


def _overcoated(window: OvercoatWindow, product: Product, spec: Spec, words: Words) -> str:
    return words("Overcoating with {}").format(_next(window, product, spec, words))


def _intervals(stated: Sequence[tuple[str, OvercoatWindow]], words: Words) -> list[Timed]:
    """Conditions that all intervals of a name share, and those that tell two of one air apart, stand beside the name, others beside
    the time: a row for each would leave half its cells empty."""
    times = []
    for name, window in stated:
        under = words.conditions(window.humidity, window.film)
        alike = [other for called, other in stated if called == name]
        by_name = len({words.conditions(one.humidity, one.film) for one in alike}) == 1 or len(
            {str(one.air) for one in alike}
        ) < len(alike)
        time = words.phrase(window.interval)
        called = f"{name}, {under}" if under and by_name else name
        times.append(Timed(name=called, air=window.air, time=f"{time}, {under}" if under and not by_name else time))
    return times


def _next(window: OvercoatWindow, product: Product, spec: Spec, words: Words) -> str:
    if window.next_coat in {_ITSELF, product.id}:
        return words("this product (second coat)")
    if window.next_coat == _ANY:
        named = any(other.next_coat != _ANY for other in product.overcoat)
        return words("any other coat in the product range") if named else words("any coat in the product range")
    return spec.products[window.next_coat].name if window.next_coat in spec.products else window.next_coat
