"""Ambient conditions and service temperature: the job stays within what its products allow."""

from specgen.rules.kit import Concern, family

family(__name__, "CLI", Concern.CLIMATE, sentences=True)

# the ambient conditions that a product can limit, by their keys
CONDITIONS = {
    "air": "air temperature",
    "surface": "surface temperature",
    "humidity": "relative humidity",
    "absolute_humidity": "absolute humidity",
    "dew_point_margin": "dew point margin",
}
