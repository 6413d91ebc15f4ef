"""Inspection of DFT: acceptance rules, gauges, number and places of readings."""

from specgen.rules.kit import Concern, family

family(__name__, "INS", Concern.ACCEPTANCE, sentences=True)
