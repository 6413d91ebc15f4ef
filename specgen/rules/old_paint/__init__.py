"""Old paint: may the new system go over what is on the part already, from the top coat down to the metal."""

from specgen.rules.kit import Concern, family

family(__name__, "OLD", Concern.COMPATIBILITY)
