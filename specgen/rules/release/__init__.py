"""Drying and release: stages in their order, when a part may be handled, read and put into service."""

from specgen.rules.kit import Concern, family

family(__name__, "REL", Concern.FILM)
