"""Repair of spots: how the new coats run out into old paint."""

from specgen.rules.kit import Concern, family

family(__name__, "REP", Concern.PREPARATION)
