"""Test methods: editions, units, scales, usual results, and what a result says nothing without."""

from specgen.rules.kit import Concern, family

family(__name__, "TST", Concern.ACCEPTANCE)
