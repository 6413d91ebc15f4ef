"""The quotations of a sentence: both sides, around the word in which they part, never the same text twice."""

from __future__ import annotations

from hypothesis import given, settings
from hypothesis import strategies as st

from specgen.comparison.sentences import sentence, whole_text
from tests.comparison.sides import changed, compared
from tests.good_spec import good, spec_of

TEXT = "preparations.sand-steel.steps.sand.text"
LONG = "Sand the whole part until no gloss is left, with the paper named, dry, in crossing strokes, and change the paper often so that no dust is rubbed in"


def _said(path: str, old: str, new: str) -> str:
    (change,) = compared(changed({path: f"'{old}'"}), changed({path: f"'{new}'"})).changes
    return sentence(change).replace("\N{NO-BREAK SPACE}", " ")


def test_long_texts_that_part_at_their_end_are_quoted_there() -> None:
    assert _said(TEXT, f"{LONG}; wear supplied air.", f"{LONG}; no mask is needed.") == (
        "Instruction of the preparation step sand of the preparation sand-steel (Degrease and sand) was reworded: it was"
        " “… the paper often so that no dust is rubbed in; wear supplied air.” and is now"
        " “… the paper often so that no dust is rubbed in; no mask is needed.”"
    )


def test_a_text_that_goes_on_longer_is_quoted_where_it_goes_on() -> None:
    said = _said("products.clear.hazards.cautions.training.text", f"{LONG}.", f"{LONG}, or ask the foreman.")
    assert "no dust is rubbed in.”" in said
    assert "no dust is rubbed in, or ask the foreman.”" in said


@settings(deadline=None)
@given(st.text("ab ", min_size=1, max_size=400), st.text("ab ", min_size=1, max_size=400))
def test_two_texts_are_never_quoted_alike(old: str, new: str) -> None:
    if old.split() and new.split() and old.split() != new.split():
        pieces = _said(TEXT, f"x{old}", f"x{new}").split("“")
        assert pieces[-2].partition("”")[0] != pieces[-1].partition("”")[0]


def test_an_entry_in_full_is_what_it_states() -> None:
    spec = spec_of(good())
    (step,) = (step for step in spec.preparations["sand-steel"].steps if step.id == "sand")
    told = whole_text(step, everything=False).replace("\N{NO-BREAK SPACE}", " ")
    assert told.split("; ")[:2] == ["do: sand", "text: Sand to an even matt surface."]
    (line, *_) = spec.products["primer"].composition
    assert "mass share: " in whole_text(line, everything=True)
    assert "mass share" not in whole_text(line, everything=False), "the maker's own"
