"""Wash and etch primers, and body filler."""

from specgen.rules.kit import Concern, family

family(__name__, "FIL", Concern.COMPATIBILITY)
