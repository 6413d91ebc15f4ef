"""Figures held against where they usually lie, against each other, and against what else the folder says of the same thing."""

from specgen.rules.kit import Concern, family

family(__name__, "USU", Concern.PRODUCT)
