"""Coats that require a product instead of naming one, and the products offered for them."""

from specgen.rules.kit import Concern, family

family(__name__, "REQ", Concern.PRODUCT)
