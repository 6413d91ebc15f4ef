"""EVD017 A corrosivity category rests on a whole test regime

Checks
    The evidence for the corrosivity category of each system, and each claim of a product that names a category with its durability or with ISO 12944: what it names, and the reports it names, hold condensation and neutral salt spray, or cyclic ageing; at C2 salt spray alone is told. Evidence that names no exposure is not judged, nor are the hours, C1, CX and immersion.
Why
    Salt spray shows the scribe, condensation what the film lets through. One of them without the other shows half of what the category promises.
Passes
    Given a category with its report
    systems.cab.category.evidence: "Report 31/2026: 240 h of condensation and 480 h of salt spray."

    Given a category with its report
    systems.cab.category.evidence: "Cyclic ageing to ISO 12944-6, annex B."

    Given a category with its report
    systems.cab.category.evidence: Test report of this very system.

    Given a category with its report
    systems.cab.category: {corrosivity: C2, durability: medium, evidence: Condensation to ISO 6270-1.}

    Given a claim with its report
    products.barrier.claims.salt.text: "In C3 high to ISO 12944-6, after condensation and 480 h of salt spray: creep from the scribe 2 mm or less."

    Given a claim with its report
    products.barrier.claims.salt.text: "For steel in C3: after 480 h of salt spray, creep from the scribe 2 mm or less."
Fails
    Given a category with its report
    systems.cab.category.evidence: "480 h of salt spray, ISO 9227."    # at systems.cab.category.evidence

    Given a category with its report
    systems.cab.category.evidence: Report 12/2026 of Laboratory Tarn.    # at systems.cab.category.evidence

    Given a category with its report
    systems.cab.category.evidence: 240 h of condensation to ISO 6270-1.    # at systems.cab.category.evidence

    Given a category with its report
    systems.cab.category: {corrosivity: C2, durability: medium, evidence: 120 h of salt spray.}    # at systems.cab.category.evidence

    Given a claim with its report
    products.barrier.claims.salt.text: "In C3 high to ISO 12944-6, after 480 h of salt spray: creep from the scribe 2 mm or less."    # at products.barrier.claims.salt.evidence
To put right
    Name the report of the other exposure too, or have it tested; otherwise claim the test alone, without the category.
"""

from specgen.facts.layer.said import categories_said
from specgen.facts.tests.regimes import claims_category, exposures_in, exposures_of, lacking_of_regime
from specgen.model.system import Corrosivity
from specgen.rules.kit import WARNING, Node, Path, Problem, Problems, Product, Spec, System, cite, date, rule
from specgen.standards.citations import Basis

_ATMOSPHERIC = {category.value: category for category in Corrosivity}


@rule("EVD017", on=Node, severity=WARNING, source=cite("ISO-12944-6", "", Basis.SECONDARY))
def category_has_a_regime(subject: Node, spec: Spec, on: date) -> Problems:
    if isinstance(subject, System) and subject.category is not None:
        claim = subject.category
        exposures = exposures_in(claim.evidence or "", spec)
        if claim.corrosivity is not None and exposures:
            yield from _told(("category", "evidence"), subject.id, claim.corrosivity, exposures)
    elif isinstance(subject, Product):
        for one in subject.claims:
            report = spec.reports.get(one.evidence.report) if one.evidence is not None else None
            if report is None or not claims_category(one.text):
                continue
            exposures = exposures_in(one.text, spec) | exposures_of(report)
            for name in categories_said(one.text):
                if name in _ATMOSPHERIC:
                    yield from _told(("claims", one.id, "evidence"), subject.id, _ATMOSPHERIC[name], exposures)


def _told(path: Path, named: str, category: Corrosivity, exposures: set[str]) -> Problems:
    lacking = lacking_of_regime(category, exposures)
    if lacking:
        held = f"names {' and '.join(sorted(exposures))} without" if exposures else "names neither"
        what = (
            f"the evidence for {category} of {named} {held} {' nor '.join(lacking)}; "
            "ISO 12944-6 rests a category on condensation and neutral salt spray, or on cyclic ageing"
        )
        yield Problem(path, what)
