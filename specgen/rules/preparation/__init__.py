"""Preparation before the first coat: steps, grades, media, profile, papers, times."""

from specgen.rules.kit import Concern, family

family(__name__, "PRE", Concern.PREPARATION)
