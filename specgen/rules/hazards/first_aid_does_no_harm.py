"""HAZ049 First aid does no further harm

Checks
    The first aid of each product: nobody is made to vomit, skin is not cleaned with solvent or thinner, eyes are rinsed with water, an unconscious person gets nothing to drink.
Why
    Solvent brought up again gets into the airways, thinner carries an allergen through the skin. The card is read by someone in a hurry, who does what it says.
Passes
    products.primer.hazards.first_aid: [{id: swallow, route: swallowed, action: "Rinse the mouth. Do not induce vomiting."}, {id: skin, route: skin, action: "Soap and water, never solvent or thinner."}]
Fails
    products.primer.hazards.first_aid: [{id: swallow, route: swallowed, action: Induce vomiting and call a doctor.}]    # at products.primer.hazards.first_aid.swallow.action

    products.primer.hazards.first_aid: [{id: skin, route: skin, action: "Wash off with thinner, then soap."}]    # at products.primer.hazards.first_aid.skin.action

    products.primer.hazards.first_aid: [{id: eyes, route: eyes, action: Wipe out with a cloth.}]    # at products.primer.hazards.first_aid.eyes.action

    Given second good
    products.gloss.hazards.first_aid: [{id: swallow, route: swallowed, action: Bring on vomiting.}]    # at products.gloss.hazards.first_aid.swallow.action
To put right
    Take the measures from section 4 of the safety data sheet.
"""

import re

from specgen.model.hazards import Route
from specgen.rules.kit import PRACTICE, WARNING, Problem, Problems, Product, Spec, date, rule

_CLAUSE = re.compile(r"[;,\n]|\.(?!\d)")
_FORBIDDEN = re.compile(
    r"\b(?:no|not|never|nothing|nor|neither|without|keep|kept|out of|avoid|prevent|instead of)\b", re.I
)
_VOMIT = re.compile(r"\bvomit", re.I)
_SOLVENT = re.compile(r"\b(?:solvents?|thinners?|acetone|petrol|gasoline|white spirit|xylene|turpentine)\b", re.I)
_WATER = re.compile(r"\bwater\b|\brins|\bflush|\bwash|\birrigat", re.I)


@rule("HAZ049", on=Product, severity=WARNING, source=PRACTICE)
def first_aid_does_no_harm(product: Product, spec: Spec, on: date) -> Problems:
    if product.hazards is None:
        return
    for entry in product.hazards.first_aid:
        path = ("hazards", "first_aid", entry.id, "action")
        if entry.route is Route.EYES and not _WATER.search(entry.action):
            yield Problem(path, f"first aid for the eyes with {product.id} does not rinse them: {entry.action}")
        for clause in _CLAUSE.split(entry.action):
            if _FORBIDDEN.search(clause):
                continue
            if _VOMIT.search(clause) and re.search(r"\b(?:induce|bring on|make|cause|provoke)\b", clause, re.I):
                yield Problem(path, f"first aid with {product.id} makes the person vomit: {clause.strip()}")
            if entry.route is Route.SKIN and _SOLVENT.search(clause):
                yield Problem(path, f"first aid with {product.id} cleans skin with solvent: {clause.strip()}")
