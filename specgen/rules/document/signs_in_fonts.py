"""DOC002 Every character is in the supplied fonts

Checks
    Each text contains only characters that every upright font supplied with specgen has.
Why
    A character missing from the fonts would be printed in a font of the machine or left out, so the document is not printed.
Passes
    jobs.refit.scope: Doors and steps, 15 °C to 25 °C, Δ 3 K, 40 µm ± 10 %
Fails
    jobs.refit.scope: Doors and 漆 steps    # at jobs.refit.scope

    project.customer.name: Example Yard 😀    # at project.customer.name

    products.primer.hazards.sensitisers_named: [maker of 漆]    # at products.primer.hazards.sensitisers_named.[0]

    Given second good
    products.gloss.hazards.waste_codes: ["漆", "16 05 04*"]    # at products.gloss.hazards.waste_codes.[0]

    Given second good
    products.gloss.hazards.sensitisers_named: [漆, oxime, maker of 漆]    # at products.gloss.hazards.sensitisers_named.[0]    # at products.gloss.hazards.sensitisers_named.[2]
To put right
    Write it another way, in Latin, Greek or Cyrillic letters.
"""

from specgen.facts.texts import texts
from specgen.model.printable import outside_fonts
from specgen.rules.kit import ERROR, LOGIC, Node, Problem, Problems, Spec, date, rule
from specgen.source.characters import named


@rule("DOC002", on=Node, severity=ERROR, source=LOGIC)
def signs_in_fonts(subject: Node, spec: Spec, on: date) -> Problems:
    for here, text, _ in texts(spec, subject):
        if lacking := outside_fonts(text):
            more = f" and {len(lacking) - 1} more" if len(lacking) > 1 else ""
            first = lacking[0]
            yield Problem(here, f"the supplied fonts do not contain “{first}” {named(first)}{more}")
