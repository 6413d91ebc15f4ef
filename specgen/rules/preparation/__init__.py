"""Surface preparation before the first coat: steps, grades, abrasives, profile, papers, times."""

from specgen.rules.kit import Concern, family

family(__name__, "PRE", Concern.PREPARATION)
