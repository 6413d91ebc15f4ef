"""Coat over coat within a system: what the published tables state for each pair of coats."""

from specgen.rules.kit import Concern, family

family(__name__, "OVR", Concern.COMPATIBILITY)
