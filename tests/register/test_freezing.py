"""What is frozen: a document's own part of the sources, both editions of it, and the digest an approval is bound to."""

from __future__ import annotations

import hashlib
import hmac
import json
from dataclasses import replace
from pathlib import Path

import pytest

from specgen.checking import check
from specgen.documents.registry import KINDS
from specgen.facts.closure import cut_to_closure
from specgen.model.canonical import canonical
from specgen.model.declaring import Audience
from specgen.model.parse import load
from specgen.model.spec import Spec
from specgen.model.walk import leaves
from specgen.printing.files import context_of, files
from specgen.register.editions import digest, editions, leaf_key, sealed
from specgen.register.failure import RegisterError
from specgen.register.frozen import thawed
from specgen.register.json_text import written
from tests.good_spec import DEMO, GOOD, ON, good_with, spec_of

SALT = bytes(range(32))


def _spec(folder: Path) -> Spec:
    spec = load(folder).spec
    assert spec is not None
    return spec


GOOD_SPEC = _spec(GOOD)
DEMO_SPEC = _spec(DEMO)
SUBJECTS = [(spec, one) for spec in (GOOD_SPEC, DEMO_SPEC) for one in (*spec.jobs.values(), *spec.products.values())]
NAMES = [one.id for _, one in SUBJECTS]


def test_a_job_reaches_its_own_and_no_more() -> None:
    shown = cut_to_closure(DEMO_SPEC, DEMO_SPEC.jobs["tower-wagon-doors"])
    job = DEMO_SPEC.jobs["tower-wagon-doors"]
    assert list(shown.jobs) == ["tower-wagon-doors"]
    assert set(shown.systems) == {system.id for system in DEMO_SPEC.systems_of(job)}
    assert set(shown.products) >= {product.id for product in DEMO_SPEC.products_of(job)}
    assert len(shown.products) < len(DEMO_SPEC.products)


@pytest.mark.parametrize("kind", ["method-statement", "materials-list", "data-sheet"])
def test_a_document_of_its_closure_says_the_same(kind: str) -> None:
    """HTML and CSV of every document of the demo, from the whole and from what is frozen."""
    checked = check(DEMO, ON)
    whole = checked.loaded.spec
    assert whole is not None
    subjects = whole.jobs if KINDS[kind].about == "job" else whole.products
    form = "csv" if kind == "materials-list" else "html"
    for subject in subjects.values():
        frozen = thawed(editions(cut_to_closure(whole, subject), SALT, {}).maker, "frozen").spec
        assert frozen is not None
        # a frozen model names its pictures, and the register keeps them beside it
        frozen = replace(frozen, pictures=whole.pictures)
        again = (frozen.jobs if KINDS[kind].about == "job" else frozen.products)[subject.id]
        first = dict(files(KINDS[kind], subject, context_of(whole, ON), formats=[form]))
        second = dict(files(KINDS[kind], again, context_of(frozen, ON), formats=[form]))
        assert first == second, subject.id


@pytest.mark.parametrize(("spec", "subject"), SUBJECTS, ids=NAMES)
def test_what_is_frozen_is_read_back(spec: Spec, subject: object) -> None:
    shown = cut_to_closure(spec, subject)
    both = editions(shown, SALT, {})
    loaded = thawed(both.maker, "maker")
    assert loaded.findings == []
    assert loaded.spec is not None
    assert canonical(loaded.spec) == canonical(shown)
    customer = thawed(both.customer, "customer")
    assert customer.findings == []
    assert customer.spec is not None
    assert canonical(customer.spec) == canonical(shown, Audience.CUSTOMER)
    text = both.maker.decode("utf-8").splitlines()
    for kind in ("products", "systems", "preparations", "jobs"):
        for key, record in getattr(loaded.spec, kind).items():
            for path, value, _ in leaves(record, (kind, key)):
                place = loaded.place(path)
                stretch = text[place.line - 1][place.column - 1 : place.end_column - 1]
                if isinstance(value, str) and "\n" not in value:
                    assert json.loads(stretch) == str(value), path


def test_the_customer_edition_holds_a_salted_hash_for_each_leaf_of_the_makers() -> None:
    shown = cut_to_closure(GOOD_SPEC, GOOD_SPEC.jobs["refit"])
    both = editions(shown, SALT, {})
    customer = json.loads(both.customer)
    # HMAC by hand, RFC 2104 through the standard library: a key of its own for each leaf
    path, text = "products.primer.composition.solids.mass_share", '"30 %"'
    key = hmac.new(SALT, path.encode(), hashlib.sha256).digest()
    assert hmac.new(key, text.encode(), hashlib.sha256).hexdigest() in customer["withheld"]["products.primer.…"]
    assert sealed(SALT, path, text) == hmac.new(leaf_key(SALT, path), text.encode(), hashlib.sha256).hexdigest()
    for secret in (b"resin and pigment", b"composition", b"mass_share", SALT.hex().encode(), b'"30 %"'):
        assert secret not in both.customer, secret
    assert b"resin and pigment" in both.maker


def test_what_the_project_keeps_from_customers_is_withheld_too() -> None:
    held = spec_of(good_with({"project.distribution": "[{id: shop, name: Body shop}]"}))
    both = editions(cut_to_closure(held, held.jobs["refit"]), SALT, {})
    assert b"Body shop" in both.maker
    assert b"Body shop" not in both.customer
    withheld = {one for many in json.loads(both.customer)["withheld"].values() for one in many}
    assert sealed(SALT, "project.distribution.shop.name", '"Body shop"') in withheld


def test_the_published_hashes_cannot_be_found_by_trying() -> None:
    """Whoever knows all but one figure of the composition tries that figure: without the salt none fits."""
    shown = cut_to_closure(GOOD_SPEC, GOOD_SPEC.jobs["refit"])
    both = editions(shown, SALT, {})
    withheld = {one for many in json.loads(both.customer)["withheld"].values() for one in many}
    path = "products.primer.composition.solids.mass_share"
    guesses = [f'"{share} %"' for share in range(101)]
    assert not {hashlib.sha256(guess.encode()).hexdigest() for guess in guesses} & withheld
    assert not {sealed(bytes(32), path, guess) for guess in guesses} & withheld
    assert {sealed(SALT, path, guess) for guess in guesses} & withheld
    assert both.maker_sha256 != hashlib.sha256(canonical(shown).encode()).hexdigest()


def test_equal_content_gives_equal_bytes_and_another_content_another_digest() -> None:
    shown = cut_to_closure(GOOD_SPEC, GOOD_SPEC.jobs["refit"])
    again = cut_to_closure(_spec(GOOD), _spec(GOOD).jobs["refit"])
    one, two = editions(shown, SALT, {"t": "1"}), editions(again, SALT, {"t": "1"})
    assert (one.maker, one.customer) == (two.maker, two.customer)
    assert digest("MS-001", "A", one) == digest("MS-001", "A", two)
    other_tables = editions(shown, SALT, {"t": "2"})
    other_salt = editions(shown, bytes(32), {"t": "1"})
    digests = {
        digest("MS-001", "A", one),
        digest("MS-001", "B", one),
        digest("MS-002", "A", one),
        digest("MS-001", "A", other_tables),
        digest("MS-001", "A", other_salt),
    }
    assert len(digests) == 5


@pytest.mark.parametrize(
    ("data", "says"),
    [
        (b"", "is not whole JSON"),
        (b"{", "is not whole JSON"),
        (b"[]\n", "does not hold an object"),
        (b"\xff\xfe{}", "is not UTF-8 text"),
        (b"[" * 100_000, "is not whole JSON"),
        (b'{"a": "1", "a": "2"}\n', "is not as the register writes it"),
        (written({"schema_version": "3"}), "of version 3"),
        (written({"schema_version": "x" * 50}), "of version"),
        (written({"schema_version": "1"}), "cannot be read back: no file"),
        (written({"schema_version": "2"}), "cannot be read back: no file"),
        (written({"schema_version": "2", "recipes": {}}), "holds recipes"),
        (written({"schema_version": "2", "project": 5}), "a value that is no text"),
        (written({"schema_version": "2", "project": "x"}), "cannot be read back"),
    ],
)
def test_what_is_no_frozen_model_is_refused_in_a_line(data: bytes, says: str) -> None:
    with pytest.raises(RegisterError, match=says):
        thawed(data, "model")
