"""Repair of spots: how the new coats run out over the existing coating."""

from specgen.rules.kit import Concern, family

family(__name__, "REP", Concern.PREPARATION)
