"""The job itself: areas, surfaces, inspection."""

from specgen.rules.kit import Concern, family

family(__name__, "JOB", Concern.ACCEPTANCE)
