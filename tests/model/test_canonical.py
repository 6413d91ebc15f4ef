"""The canonical form: what was stated and nothing else, in one order; the customer's edition without what is the maker's."""

from __future__ import annotations

import json
from typing import Any

from specgen.model.canonical import canonical
from specgen.model.declaring import Audience
from specgen.model.spec import LIST_KINDS, Spec
from specgen.model.walk import leaves
from tests.good_spec import good, put, spec_of, take_out


def _spec(source: dict[str, Any]) -> Spec:
    return spec_of(source)


def _turned(value: Any, *, top: bool = True) -> Any:
    """The same source with the keys of every group in the opposite order; lists keep theirs, for it means something."""
    if isinstance(value, dict):
        return {key: _turned(held, top=False) for key, held in reversed(value.items())}
    return [_turned(entry, top=False) for entry in value] if isinstance(value, list) else value


def _as_source(written: dict[str, Any]) -> dict[str, Any]:
    """A canonical form as the source that would say it."""
    return {
        "project": written["project"],
        **{kind: list(written[kind].values()) for kind in LIST_KINDS if kind in written},
    }


def test_what_is_written_is_what_was_stated() -> None:
    """Source to canonical and back to source: not a key more, not a key less, every text as the author wrote it."""
    stated = good()
    by_id = {kind: {entry["id"]: entry for entry in stated[kind]} for kind in LIST_KINDS if kind in stated}
    written = json.loads(canonical(_spec(stated)))
    # the version stands at the head of the whole, not among what is stated
    version = stated["project"].pop("schema_version")
    assert written == {"schema_version": version, "project": stated["project"], **by_id}


def test_canonical_form_read_again_is_the_same() -> None:
    first = canonical(_spec(good()))
    assert canonical(_spec(_as_source(json.loads(first)))) == first


def test_order_of_keys_is_of_no_account() -> None:
    assert canonical(_spec(_turned(good()))) == canonical(_spec(good()))


def test_order_of_layers_is_of_account() -> None:
    source = good()
    source["systems"][0]["layers"].reverse()
    assert canonical(_spec(source)) != canonical(_spec(good()))


def test_defaults_are_not_written() -> None:
    written = json.loads(canonical(_spec(good())))
    assert "language" not in written["project"]
    assert "page_size" not in written["project"]
    assert "numbering" not in written["project"]
    assert "cautions" not in written["products"]["primer"]["hazards"]
    assert "hold_point" not in written["jobs"]["refit"]["inspection"][1]
    assert "null" not in canonical(_spec(good()))


def test_default_that_is_stated_is_written() -> None:
    source = good()
    put(source, "project.language", "en")
    assert json.loads(canonical(_spec(source)))["project"]["language"] == "en"


def test_absent_value_leaves_no_trace() -> None:
    source = good()
    take_out(source, "products.primer.shelf_life")
    assert "shelf_life" not in json.loads(canonical(_spec(source)))["products"]["primer"]


def test_customer_edition_holds_no_leaf_of_the_maker() -> None:
    spec = _spec(good())
    makers = [
        (path, value)
        for product in spec.products.values()
        for path, value, said in leaves(product, ("products", product.id))
        if said.audience is Audience.MAKER
    ]
    assert len(makers) == 15
    edition = canonical(spec, Audience.CUSTOMER)
    written = json.loads(edition)
    assert all("composition" not in product for product in written["products"].values())
    # the texts themselves, not only their key: nothing of the composition may turn up elsewhere
    for text in ("resin and pigment", "solvent blend", "1.5 g/mL", "0.85 g/mL", "mass_share"):
        assert text in canonical(spec)
        assert text not in edition


def test_editions_differ_in_nothing_else() -> None:
    whole = json.loads(canonical(_spec(good())))
    del whole["products"]["primer"]["composition"]
    assert whole == json.loads(canonical(_spec(good()), Audience.CUSTOMER))


def test_values_are_text_as_written() -> None:
    source = good()
    put(source, "products.primer.film.max", "80.0 um")
    put(source, "products.barrier.application.mixing.ratio_by_volume", "'4.50:1'")
    written = json.loads(canonical(_spec(source)))
    assert written["products"]["primer"]["film"]["max"] == "80.0 um"
    assert written["products"]["barrier"]["application"]["mixing"]["ratio_by_volume"] == "4.5:1"
    assert written["jobs"]["refit"]["items"][0]["count"] == "2"
    assert written["jobs"]["refit"]["inspection"][0]["hold_point"] == "yes"
    assert written["schema_version"] == "2"
