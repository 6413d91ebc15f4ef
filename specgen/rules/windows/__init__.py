"""Overcoating intervals: when the next coat may be applied, and what is done if the maximum is exceeded."""

from specgen.rules.kit import Concern, family

family(__name__, "WIN", Concern.COMPATIBILITY)
