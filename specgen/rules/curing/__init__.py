"""Curing type: the values that a product of this type has and cannot have."""

from specgen.rules.kit import Concern, family

family(__name__, "CUR", Concern.PRODUCT)
