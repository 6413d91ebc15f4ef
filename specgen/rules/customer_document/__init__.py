"""The customer's own document: whether the jobs made to it meet its clauses, and whether it agrees with itself."""

from specgen.rules.kit import Concern, family

family(__name__, "CUS", Concern.DOCUMENT)
