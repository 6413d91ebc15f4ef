"""The job itself: areas, surfaces, inspection points."""

from specgen.rules.kit import Concern, family

family(__name__, "JOB", Concern.ACCEPTANCE, sentences=True)
