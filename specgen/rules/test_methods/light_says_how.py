"""TST010 A claim of weathering names lamp, cycle and irradiance

Checks
    Hours of fluorescent UV or xenon light in the description or a claim of a product: lamp or filter, irradiance and cycle (or the method and cycle of the standard) stand beside them. A colour alone, without gloss or chalking, is told beside what is missing, and of an epoxy in any case. A colour difference no greater than two readings with instruments of different make may differ by is told, as a note where gloss or chalking stand beside it.
Why
    The standard itself forbids to quote results without the operating conditions. An epoxy chalks and loses its gloss long before its colour moves. And a colour difference that lies inside the spread of instruments is no figure: it neither shows a change nor that there was none.
Passes
    products.clear.about: "After 1000 h of xenon light (ISO 16474-2 method A, cycle 1, daylight filter, 0.51 W/m2 nm) 85 % of the gloss is kept."

    products.clear.about: "After 1000 h of UVA-340 at 0.89 W/m2 nm, 8 h at 60 degC and 4 h of condensation: colour change 0.8 dE00 (D65, 10 degrees), 90 % of the gloss is kept."
Fails
    products.clear.about: "After 1000 h of UVA-340 at 0.89 W/m2 nm, 8 h at 60 degC and 4 h of condensation: colour change 0.7 dE00 (D65, 10 degrees)."    # at products.clear.about

    products.clear.about: "After 1000 h of UVA-340 at 0.89 W/m2 nm, 8 h at 60 degC and 4 h of condensation: colour change 0.7 dE00 (D65, 10 degrees), 90 % of the gloss is kept."    # note at products.clear.about

    products.clear.about: "85 % of the gloss is kept after 600 h of fluorescent UV."    # at products.clear.about

    products.barrier.about: "After 600 h of UVA-340 at 0.89 W/m2 nm, 8 h at 60 degC and 4 h of condensation: colour unchanged."    # at products.barrier.about
To put right
    State lamp, irradiance, cycle and temperature from the test report; for an epoxy the gloss kept and the chalking. Claim a small colour difference as a limit that instruments tell apart, with the gloss kept and the chalking.
"""

import re
from fractions import Fraction

from specgen.facts.tests.colour_stated import changes_said, instruments_differ_by
from specgen.facts.tests.in_words import sentences
from specgen.facts.tests.spoken import Spoken, spoken
from specgen.rules.kit import NOTE, PRACTICE, WARNING, Problem, Problems, Product, Spec, cite, date, rule

_EXPOSED = re.compile(r"\b(?:QUV|UVA?-?340|UVB?-?313|fluorescent|xenon|UV lamps?)\b", re.IGNORECASE)
_HOURS = re.compile(r"\d ?(?:h|hours?|kJ)\b", re.IGNORECASE)
_NEEDED = (
    ("the lamp or filter", re.compile(r"UVA?-?340|UVB?-?313|filter|UVA-351", re.IGNORECASE)),
    ("the irradiance", re.compile(r"W/m|irradiance|kJ/m", re.IGNORECASE)),
    ("the cycle", re.compile(r"cycle|condens|spray", re.IGNORECASE)),
)
_COLOUR, _GLOSS = re.compile(r"colou?r|\bdE|ΔE", re.IGNORECASE), re.compile(r"gloss|chalk", re.IGNORECASE)
_EPOXY = "epoxy"


@rule("TST010", on=Product, severity=WARNING, source=cite("ASTM-G154", "5.2"))
def light_says_how(product: Product, spec: Spec, on: date) -> Problems:
    for place in spoken(product, spec):
        if not place.words_alone or not any(
            _EXPOSED.search(one) and _HOURS.search(one) for one in sentences(place.text)
        ):
            continue
        yield from _inside_the_spread(place)
        lacking = [name for name, pattern in _NEEDED if not pattern.search(place.text)]
        colour_alone = bool(_COLOUR.search(place.text)) and not _GLOSS.search(place.text)
        if lacking:
            lacking += ["what became of the gloss"] if colour_alone else []
            yield Problem(
                place.path,
                f"the hours of light state neither {' nor '.join(lacking)}"
                if lacking[1:]
                else f"the hours of light do not state {lacking[0]}",
            )
        if place.family.startswith(_EPOXY) and colour_alone:
            yield Problem(
                place.path,
                f"colour alone after light says nothing of {product.id}, an epoxy: gloss and chalking are not stated",
            )


def _inside_the_spread(place: Spoken) -> Problems:
    spread = instruments_differ_by()
    for figure in (digits for sentence in sentences(place.text) for digits in changes_said(sentence)):
        if Fraction(figure) <= spread:
            what = (
                f"a colour change of {figure} after light lies inside the spread of instruments, {float(spread)}: "
                "it is no claim of resistance to weather"
            )
            yield Problem(place.path, what, severity=NOTE if _GLOSS.search(place.text) else None, source=PRACTICE)
