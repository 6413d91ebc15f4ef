"""Ventilation: its wording and its flow protect people from inhaling the spray as well as from explosions."""

from specgen.rules.kit import Concern, family

family(__name__, "AIR", Concern.SAFETY, sentences=True)
