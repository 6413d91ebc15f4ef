"""The schedule of a job: it is whole, and a plan is found."""

from specgen.rules.kit import Concern, family

family(__name__, "SCH", Concern.DOCUMENT)
