"""Curing kind: what a product that cures this way has and cannot have."""

from specgen.rules.kit import Concern, family

family(__name__, "CUR", Concern.PRODUCT)
