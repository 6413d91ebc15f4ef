"""Coat over coat inside a system: what the published tables say of each pair of layers."""

from specgen.rules.kit import Concern, family

family(__name__, "OVR", Concern.COMPATIBILITY)
