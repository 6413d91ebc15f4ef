"""Dry film thickness: limits, sums and what a product allows."""

from specgen.rules.kit import Concern, family

family(__name__, "FLM", Concern.FILM)
