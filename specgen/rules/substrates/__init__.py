"""Substrates: what may be applied to each of them, and in what condition."""

from specgen.rules.kit import Concern, family

family(__name__, "SUB", Concern.COMPATIBILITY)
