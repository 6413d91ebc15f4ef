"""Inspection plan and records: who takes part in an inspection."""

from specgen.rules.kit import Concern, family

family(__name__, "REC", Concern.ACCEPTANCE)
