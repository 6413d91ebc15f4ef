"""Layer order: which coat may stand where."""

from specgen.rules.kit import Concern, family

family(__name__, "LAY", Concern.COMPATIBILITY)
