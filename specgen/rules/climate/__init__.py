"""Climate and service: the job stays inside what its products allow."""

from specgen.rules.kit import Concern, family

family(__name__, "CLI", Concern.CLIMATE)
