"""Air: what is said and done about it keeps people from breathing the spray as well as from explosions."""

from specgen.rules.kit import Concern, family

family(__name__, "AIR", Concern.SAFETY)
