"""CUR006 An activated can is not kept beyond its usable life

Checks
    What a capsule can says of a part-used can, of its activation and of its valve: no span of time longer than its stated usable life after activation, and in the storage of a part-used can a word on what becomes of an activated one. What says that it may not be kept passes.
Why
    The capsule has put hardener into the whole can: after its usable life the contents set in the can and in the valve, and what comes out before that cures badly on the part.
Passes
    Given a can with a capsule
    products.primer.application.put_away: Not to be put away once activated; hand the can in after its 36 hours.

    Given a can with a capsule
    products.primer.application.put_away: "Before activation: upright, cap on. Activated: empty within the usable life."

    products.base.application.put_away: cap the can and store it upright for 12 months
Fails
    Given a can with a capsule
    products.primer.application.put_away: Upright, cap on; it can be used again for 4 weeks.    # at products.primer.application.put_away

    Given a can with a capsule
    products.primer.application.put_away: cap the can and store it upright    # at products.primer.application.put_away

    Given a can with a capsule
    products.primer.application.activation.action: Press the pin in. The can stays usable for 3 months.    # at products.primer.application.activation.action
To put right
    State in words the usable life after activation, and that what is left is handed in as waste.
"""

import re
from fractions import Fraction

from specgen.facts.product.curing import states
from specgen.model.product import CuringKind
from specgen.rules.kit import LOGIC, WARNING, Path, Problem, Problems, Product, Quantity, Spec, date, rule

_TIME = re.compile(r"(?<![\w.,])(\d+(?:\.\d+)?) ?(min|h|day|week)(?:utes?|ours?|s)?\b", re.I)
_MONTHS = re.compile(r"\b\d+ (?:months?|years?)\b", re.I)
_UNOPENED = re.compile(r"\b(?:before|un|not yet |until )activat\w*|\bunopened|\bnew can|shelf", re.I)
_FATE = re.compile(
    r"activat|usable|\bhours?\b|\d h\b|\bnot\b|\bnever\b|\bhand|waste|dispos|discard|throw|\bempt(?:y|ied)\b|same (?:day|shift)",
    re.I,
)
_SAID: tuple[Path, ...] = (
    ("application", "put_away"),
    ("application", "restart"),
    ("application", "clear_valve"),
    ("application", "activation", "action"),
)


@rule("CUR006", on=Product, severity=WARNING, source=LOGIC)
def activated_can_not_kept(product: Product, spec: Spec, on: date) -> Problems:
    if product.curing is not CuringKind.CAPSULE_AEROSOL or product.application is None:
        return
    activation = product.application.activation
    life = activation.usable_for if activation is not None else None
    for path in _SAID:
        if not states(product, path):
            continue
        text = _text(product, path)
        longer = next((said for said, time in _times(text) if life is not None and (time is None or time > life)), None)
        if longer is not None:
            what = f"{path[-1]} of {product.id} speaks of {longer}; once activated the can is usable for {life}"
            yield Problem(path, what)
        elif path[-1] == "put_away" and not _FATE.search(text):
            what = f"put_away of {product.id} keeps a part-used can, which has been activated, and does not say for how long"
            yield Problem(path, what)


def _text(product: Product, path: Path) -> str:
    at: object = product
    for step in path:
        at = getattr(at, step)
    return str(at)


def _times(text: str) -> list[tuple[str, Quantity | None]]:
    """Every span of time that the text names, unless its sentence speaks of a can not yet activated; months have no figure."""
    found: list[tuple[str, Quantity | None]] = []
    for clause in re.split(r"[;.](?!\d)", text):
        if _UNOPENED.search(clause):
            continue
        found += [(match[0], None) for match in _MONTHS.finditer(clause)]
        for match in _TIME.finditer(clause):
            said = Quantity.of("duration", Fraction(match[1]), match[2].lower(), match[1])
            found.append((match[0], said))
    return found
