"""Overcoat windows: when the next coat may go on, and what is done when it is late."""

from specgen.rules.kit import Concern, family

family(__name__, "WIN", Concern.COMPATIBILITY)
