"""Emissions: volatile organic compounds and their limits."""

from specgen.rules.kit import Concern, family

family(__name__, "VOC", Concern.SAFETY)
