"""What every leaf is for begins with a noun phrase, so that a sentence can name it without its key."""

import re

import pytest

from specgen.comparison.naming import leaf_named
from specgen.model.node import Node
from specgen.model.spec import KINDS
from specgen.model.walk import declaration, models

LEAVES = [
    (model, name)
    for model in dict.fromkeys(model for root in KINDS.values() for model in models(root))
    for name in model.model_fields
    if declaration(model, name) is not None
]
# a clause, a remark on how to write the value, or an article: none of them names a thing after "the old" or before "of"
_NO_NOUN = re.compile(
    r"(an?|the|this|is|are|does|do|may|must|can|how|what|when|where|whether|which|who|why|as|if|in|on|for|by|or|and)\b",
    re.IGNORECASE,
)


@pytest.mark.parametrize(("model", "name"), LEAVES, ids=[f"{model.__name__}.{name}" for model, name in LEAVES])
def test_a_leaf_is_named_by_a_noun_phrase(model: type[Node], name: str) -> None:
    said = leaf_named(model, name)
    assert said
    assert not _NO_NOUN.match(said)
    assert not re.search(r"[_(){}:;=]|\b[a-z]\w*\.\w", said), "a key, an address or half a remark"


def test_a_clause_is_seen() -> None:
    assert _NO_NOUN.match("what to do once the interval is past")
    assert not _NO_NOUN.match("action if the maximum overcoating interval is exceeded")
