"""Hazards: a product whose hazards are not declared is not printed."""

from specgen.rules.kit import Concern, family

family(__name__, "HAZ", Concern.SAFETY)
