"""Existing coating: whether the new system may be applied over what is already on the part, from its last coat down to the metal."""

from specgen.rules.kit import Concern, family

family(__name__, "OLD", Concern.COMPATIBILITY)
