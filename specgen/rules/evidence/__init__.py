"""Claims, and the test reports behind them."""

from specgen.rules.kit import Concern, family

family(__name__, "EVD", Concern.PRODUCT)
