"""Order of coats: which coat may be applied over which."""

from specgen.rules.kit import Concern, family

family(__name__, "LAY", Concern.COMPATIBILITY)
