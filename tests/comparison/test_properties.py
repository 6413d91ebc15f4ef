"""What holds for any two specifications: nothing differs from itself, the way back mirrors the way there, tightened twice is tightened."""

from __future__ import annotations

from typing import Any

from hypothesis import given, settings
from hypothesis import strategies as st

from specgen.comparison.changes import Comparison, Effect
from specgen.comparison.compare import Side, compare
from specgen.model.outline import value_type
from specgen.model.spec import Spec
from tests.comparison.full_spec import ROOTS, Leaf, at, built, every_leaf, place, samples, tree
from tests.comparison.way_back import mirrored, mirrored_kind

LEAVES = list(every_leaf())
BY_ROOT = {root: [leaf for leaf in LEAVES if leaf.root == root and not leaf.many] for root in ROOTS}


def _compared(old: Spec, new: Spec) -> Comparison:
    return compare(Side(old, place), Side(new, place))


@st.composite
def _specs(draw: st.DrawFn) -> Spec:
    """A record of some kind in which a few leaves hold their second value, a few are left out, and entries may be gone."""
    root = draw(st.sampled_from(sorted(ROOTS)))
    return drawn(draw, root)


@st.composite
def _pairs(draw: st.DrawFn) -> tuple[Spec, Spec]:
    root = draw(st.sampled_from(sorted(ROOTS)))
    return drawn(draw, root), drawn(draw, root)


def drawn(draw: st.DrawFn, root: str) -> Spec:
    whole = tree(ROOTS[root], "first")
    for leaf in draw(st.lists(st.sampled_from(BY_ROOT[root]), max_size=12, unique_by=str)):
        held = at(whole, leaf.steps)
        required = leaf.model.model_fields[leaf.name].is_required()
        if not required and draw(st.booleans()):
            held.pop(leaf.name, None)
        else:
            kind = value_type(leaf.model.model_fields[leaf.name])
            assert kind is not None
            held[leaf.name] = samples(kind)[1]
    for name, value in list(whole.items()):
        if isinstance(value, tuple) and isinstance(value[0], dict):
            whole[name] = draw(st.sampled_from([value, value[:1], value[1:], value[::-1]]))
    return built(root, whole)


@settings(max_examples=40, deadline=None)
@given(_specs())
def test_nothing_differs_from_itself(spec: Spec) -> None:
    assert _compared(spec, spec).is_empty


@settings(max_examples=60, deadline=None)
@given(_pairs())
def test_the_way_back_mirrors_the_way_there(pair: tuple[Spec, Spec]) -> None:
    old, new = pair
    there, back = _compared(old, new), _compared(new, old)
    assert sorted(_told(there, turned=False)) == sorted(_told(back, turned=True))


def _told(found: Comparison, *, turned: bool) -> list[tuple[str, ...]]:
    changes = [change for top in found.changes for one in (top, *top.alike) for change in (one, *one.follows)]
    told = []
    for change in changes:
        effect, kind = change.effect, change.difference.kind
        if turned:
            effect, kind = mirrored(effect), mirrored_kind(kind)
        # an entry that got another id goes by that of the other side on the way back
        path = change.difference.old_path if turned else change.difference.path
        told.append((".".join(path), effect.value, kind.value, change.concern.value))
    return told


def _amounts(units: list[str]) -> st.SearchStrategy[str]:
    number = st.integers(1, 400).map(lambda n: f"{n / 10:.1f}")
    return st.builds(lambda n, unit: f"{n} {unit}", number, st.sampled_from(units))


def _ranges(unit: str) -> st.SearchStrategy[str]:
    ends = st.tuples(st.integers(1, 30), st.integers(1, 30)).map(sorted)
    return st.one_of(
        ends.map(lambda pair: f"{pair[0]}..{pair[1]} {unit}"),
        st.integers(1, 30).map(lambda n: f"min {n} {unit}"),
        st.integers(1, 30).map(lambda n: f"max {n} {unit}"),
    )


def _subsets(words: list[str]) -> st.SearchStrategy[tuple[str, ...]]:
    return st.lists(st.sampled_from(words), unique=True, min_size=1).map(tuple)


CHAINS: dict[str, st.SearchStrategy[Any]] = {
    "systems.first.layers.first.film.min": _amounts(["um", "mil", "mm"]),
    "systems.first.layers.first.film.max": _amounts(["um", "mil", "mm"]),
    "systems.first.layers.first.thinner": _amounts(["%"]),
    "systems.first.layers.first.overcoat_interval": _ranges("h"),
    "systems.first.layers.first.passes": st.integers(1, 4).map(str),
    "systems.first.layers.first.if_exceeded": st.sampled_from(["sand", "sand it", "wash"]),
    "systems.first.layers.first.abraded_with": st.sampled_from(["P400", "P500"]),
    "preparations.first.steps.first.grade": st.sampled_from(["Sa 1", "Sa 2", "Sa 3", "St 2", "St 3", "SP 16", "P Ma"]),
    "products.first.roles": _subsets(["primer", "surfacer", "topcoat"]),
    "products.first.hazards.statements": _subsets(["H222", "H229", "H317"]),
    "products.first.hazards.signal_word": st.sampled_from(["Danger", "Warning", "none"]),
    "products.first.overcoat.first.next_coat": st.sampled_from(["any", "first", "second"]),
    "products.first.hazards.cautions.first.task": st.sampled_from(["any", "mixing", "spraying"]),
    "jobs.first.vehicles": _subsets(["T 1", "T 2", "T 3"]),
    "jobs.first.waivers.first.until": st.sampled_from(["2026-01-01", "2026-02-01", "2026-03-01"]),
}
_NAMED = {str(leaf): leaf for leaf in LEAVES}


@st.composite
def _chains(draw: st.DrawFn) -> tuple[Leaf, list[Any]]:
    leaf = _NAMED[draw(st.sampled_from(sorted(CHAINS)))]
    values = CHAINS[str(leaf)]
    if not leaf.model.model_fields[leaf.name].is_required():
        values = st.one_of(st.none(), values)
    return leaf, draw(st.lists(values, min_size=3, max_size=3))


def _with(leaf: Leaf, value: Any) -> Spec:
    whole = tree(ROOTS[leaf.root], "first")
    held = at(whole, leaf.steps)
    held[leaf.name] = value
    if value is None:
        del held[leaf.name]
    return built(leaf.root, whole)


def _effect(old: Spec, new: Spec) -> Effect | None:
    changes = _compared(old, new).changes
    assert len(changes) <= 1
    return changes[0].effect if changes else None


@settings(max_examples=200, deadline=None)
@given(_chains())
def test_a_chain_of_tightened_steps_is_tightened(chain: tuple[Leaf, list[Any]]) -> None:
    leaf, values = chain
    first, second, third = (_with(leaf, value) for value in values)
    steps = {_effect(first, second), _effect(second, third)}
    if steps <= {Effect.TIGHTENED, Effect.EDITORIAL, None}:
        expected = {Effect.TIGHTENED} if Effect.TIGHTENED in steps else {Effect.EDITORIAL, None}
        assert _effect(first, third) in expected
