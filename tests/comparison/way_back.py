"""What a change is called by one who compares the other way round. Called by the tests here."""

from __future__ import annotations

from specgen.comparison.changes import Effect, Kind

_EFFECTS = {Effect.TIGHTENED: Effect.RELAXED, Effect.RELAXED: Effect.TIGHTENED}
_KINDS = {Kind.ADDED: Kind.REMOVED, Kind.REMOVED: Kind.ADDED}


def mirrored(effect: Effect) -> Effect:
    return _EFFECTS.get(effect, effect)


def mirrored_kind(kind: Kind) -> Kind:
    return _KINDS.get(kind, kind)
