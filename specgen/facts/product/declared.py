"""The declared label of a product beside the one its declared classes give; and what the words of the sheet name.

Called by the rules on hazards. Nothing declared is changed, and what is not declared at all has a rule of its own.
"""

from __future__ import annotations

import re

from specgen.facts.memo import memoised
from specgen.facts.product.hazard_facts import declared_classes, for_the_public, is_known, package_of
from specgen.facts.product.hazards import label_of
from specgen.model.hazards import Hazards, Protection, Task
from specgen.model.product import Product
from specgen.model.spec import Spec
from specgen.standards.tables import table
from specgen.trade.codes import parts
from specgen.trade.known import NotKnown
from specgen.trade.label_comparison import DeclaredLabel, Difference, compare_label
from specgen.trade.precautions import precautions

_AIR_FED = re.compile(
    r"air[- ]fed|supplied[- ]air|air[- ]?line|self-contained|breathing apparatus|\bSCBA\b|\bEN (?:14594|14593|137)",
    re.I,
)
_REFUSED = re.compile(r"\b(?:no|not|without|instead of)\b[^.;]*\bair", re.I)
_FILTER = re.compile(r"\bA\d?B?\d?-?P\d\b|\bAX|\bA[123]\b|\bFFP\d|\bP[123]\b|\bfilter", re.I)
_TYPE_A = re.compile(r"\bA[123](?:B\d)?(?:E\d)?(?:K\d)?(?:-?P\d)?\b")
_AX = re.compile(r"\bAX")
_WET = (Task.MIXING, Task.SPRAYING, Task.CLEAN_UP, Task.ANY)


def differences(product: Product, spec: Spec) -> tuple[Difference, ...]:
    """Where the declared label and the declared classes part; none while a class is missing or not known."""
    return _differences(spec, product.id)


@memoised
def _differences(spec: Spec, product_id: str) -> tuple[Difference, ...]:
    product = spec.products[product_id]
    hazards, classes = product.hazards, declared_classes(product)
    if hazards is None or not classes or not all(is_known(found) for found in classes):
        return ()
    derived = label_of(product, classes)
    if isinstance(derived, NotKnown):
        return ()
    wanted = precautions(classes, package_of(product), public=for_the_public(product, spec.project))
    word = derived.signal_word.code if hazards.signal_word is None else hazards.signal_word.value
    label = DeclaredLabel(word, hazards.statements, hazards.pictograms, hazards.precautions)
    found = compare_label(label, derived, wanted)
    return tuple(entry for entry in found if hazards.statements or entry.part != "statement")


def excluded_from_aerosols() -> frozenset[str]:
    """Codes that an aerosol never carries."""
    return frozenset(row["code"] for row in table("aerosol_exclusions").rows if row["effect"] == "surplus")


def aerosol_sets() -> dict[str, frozenset[str]]:
    """The statements of an aerosol by its category."""
    rows = [row for row in table("label_elements").rows if row["hazard_class"] == "aerosols"]
    return {row["category"]: frozenset(parts(row["statements"])) for row in rows}


def aerosol_category_declared(product: Product) -> str | None:
    """The category of an aerosol by its declared class, else by its declared statements."""
    for found in declared_classes(product):
        if found.hazard_class == "aerosols":
            return found.category
    declared = aerosol_statements(product)
    return next((category for category, codes in aerosol_sets().items() if codes == declared), None)


def aerosol_statements(product: Product) -> frozenset[str]:
    """The declared statements that speak of the aerosol as such."""
    known = frozenset[str]().union(*aerosol_sets().values())
    return known & frozenset(product.hazards.statements if product.hazards is not None else ())


def spraying(hazards: Hazards) -> tuple[Protection, ...]:
    """The entries of protection that hold at spraying."""
    return tuple(entry for entry in hazards.protection if entry.task in {Task.SPRAYING, Task.ANY})


def wet_work(hazards: Hazards) -> tuple[Protection, ...]:
    """The entries of protection for work with the wet product."""
    return tuple(entry for entry in hazards.protection if entry.task in _WET)


def is_air_fed(text: str) -> bool:
    """True where breathing air is what is asked for first, and no filter stands beside it as another way."""
    first = text.partition(";")[0]
    return bool(_AIR_FED.search(first)) and not _REFUSED.search(first) and not _FILTER.search(first)


def names_air_fed(text: str) -> bool:
    return bool(_AIR_FED.search(text)) and not _REFUSED.search(text)


def names_ax(text: str) -> bool:
    """True where a filter of type AX is named, which is for single use (table protective_equipment)."""
    return bool(_AX.search(text))


def is_type_a(text: str) -> bool:
    """True where a filter of type A is named and none of type AX."""
    return bool(_TYPE_A.search(text)) and not _AX.search(text)


def sensitises(product: Product) -> bool:
    """True where a declared statement says that it sensitises."""
    hazards = product.hazards
    if hazards is None:
        return False
    codes = {"H317", "H334", "EUH204", "EUH205", "EUH208"}
    return bool(codes & {*hazards.statements, *hazards.supplemental})


def in_europe(spec: Spec) -> bool:
    """True where the law of the EU or of Great Britain holds."""
    return bool({"EU", "GB"} & {*spec.project.jurisdictions})


def water_has_no_law(hazard_class: str, spec: Spec) -> bool:
    """True for a class of water under the law of the United States alone, which has none."""
    return hazard_class.startswith("aquatic") and all(law.startswith("US") for law in spec.project.jurisdictions)
