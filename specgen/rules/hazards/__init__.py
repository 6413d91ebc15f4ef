"""Hazards: nothing is printed about a product whose hazards are not declared."""

from specgen.rules.kit import Concern, family

family(__name__, "HAZ", Concern.SAFETY)
