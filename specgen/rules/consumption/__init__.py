"""Consumption: what a pack is claimed to cover, what is lost, and how many packs are ordered."""

from specgen.rules.kit import Concern, family

family(__name__, "USE", Concern.FILM)
