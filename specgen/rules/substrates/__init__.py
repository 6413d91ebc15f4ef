"""Materials: what may go on each of them, and in what state."""

from specgen.rules.kit import Concern, family

family(__name__, "SUB", Concern.COMPATIBILITY)
