"""Inspection of film: counting rules, gauges, numbers and places of readings."""

from specgen.rules.kit import Concern, family

family(__name__, "INS", Concern.ACCEPTANCE)
