"""A concession: a limit of a job that is eased for named items, by so much, until a day, by a person who answers for it.

It stands beside the job and never in it: what was approved stays as it was, and what was granted on the way is told apart from it. Only
what is measured or assessed can be conceded. A hold point, a party's involvement, protection of people and hazards have no key here.
"""

from __future__ import annotations

from specgen.model.declaring import Concern, Polarity, leaf, part
from specgen.model.field_types import (
    HumidityRange,
    Id,
    IsoDate,
    Line,
    SurfaceDensity,
    TemperatureDifferenceRange,
    TemperatureRange,
    Text,
    Thickness,
    ThicknessRange,
    WholeNumber,
)
from specgen.model.node import Node


class ConcededMinimum(Node):
    """A film that may be thinner."""

    specified: Thickness = leaf(Polarity.FACT, Concern.ACCEPTANCE, "limit as specified", required=True)
    conceded: Thickness = leaf(Polarity.AT_LEAST, Concern.ACCEPTANCE, "limit as conceded", required=True)


class ConcededMaximum(Node):
    """A film that may be thicker."""

    specified: Thickness = leaf(Polarity.FACT, Concern.ACCEPTANCE, "limit as specified", required=True)
    conceded: Thickness = leaf(Polarity.AT_MOST, Concern.ACCEPTANCE, "limit as conceded", required=True)


class ConcededSalt(Node):
    """More salt on a prepared surface."""

    specified: SurfaceDensity = leaf(Polarity.FACT, Concern.ACCEPTANCE, "limit as specified", required=True)
    conceded: SurfaceDensity = leaf(Polarity.AT_MOST, Concern.ACCEPTANCE, "limit as conceded", required=True)


class ConcededRating(Node):
    """A higher rating of dust, to ISO 8502-3."""

    specified: WholeNumber = leaf(Polarity.FACT, Concern.ACCEPTANCE, "limit as specified", required=True)
    conceded: WholeNumber = leaf(Polarity.AT_MOST, Concern.ACCEPTANCE, "limit as conceded", required=True)


class ConcededProfile(Node):
    """A wider range of surface profile."""

    specified: ThicknessRange = leaf(Polarity.FACT, Concern.ACCEPTANCE, "limits as specified", required=True)
    conceded: ThicknessRange = leaf(Polarity.WITHIN, Concern.ACCEPTANCE, "limits as conceded", required=True)


class ConcededTemperature(Node):
    """A wider range of air or surface temperature."""

    specified: TemperatureRange = leaf(Polarity.FACT, Concern.CLIMATE, "limits as specified", required=True)
    conceded: TemperatureRange = leaf(Polarity.WITHIN, Concern.CLIMATE, "limits as conceded", required=True)


class ConcededHumidity(Node):
    """A wider range of relative humidity."""

    specified: HumidityRange = leaf(Polarity.FACT, Concern.CLIMATE, "limits as specified", required=True)
    conceded: HumidityRange = leaf(Polarity.WITHIN, Concern.CLIMATE, "limits as conceded", required=True)


class ConcededMargin(Node):
    """A surface nearer to the dew point."""

    specified: TemperatureDifferenceRange = leaf(Polarity.FACT, Concern.CLIMATE, "limits as specified", required=True)
    conceded: TemperatureDifferenceRange = leaf(Polarity.WITHIN, Concern.CLIMATE, "limits as conceded", required=True)


class ConcededResult(Node):
    """Another limit of the test done at a point."""

    specified: Line = leaf(Polarity.FACT, Concern.ACCEPTANCE, "limit as specified, as in min 5 MPa", required=True)
    conceded: Line = leaf(
        Polarity.REQUIREMENT_TEXT, Concern.ACCEPTANCE, "limit as conceded, as in min 4 MPa", required=True
    )


class ConcededWords(Node):
    """What is accepted against a criterion in words: a person holds the part against it."""

    specified: Text = leaf(Polarity.FACT, Concern.ACCEPTANCE, "criterion as specified, in words", required=True)
    conceded: Text = leaf(
        Polarity.REQUIREMENT_TEXT,
        Concern.ACCEPTANCE,
        "deviation accepted, in words: what, where, how far",
        required=True,
    )


EASED: tuple[type[Node], ...] = (
    ConcededMinimum,
    ConcededMaximum,
    ConcededSalt,
    ConcededRating,
    ConcededProfile,
    ConcededTemperature,
    ConcededHumidity,
    ConcededMargin,
    ConcededResult,
    ConcededWords,
)
"""What may stand under the name of a limit: each of them lets something in that was not accepted before."""


class Concession(Node):
    """One limit of one job, eased for the items named."""

    id: Id = leaf(Polarity.SCOPE, Concern.ACCEPTANCE, "id of the concession", required=True)
    job: Id = leaf(
        Polarity.REPLACED, Concern.ACCEPTANCE, "job it is granted in (by its id)", required=True, refers="jobs"
    )
    items: tuple[Id, ...] = leaf(
        Polarity.ONE_OF, Concern.ACCEPTANCE, "items it is granted for (by their ids)", required=True
    )
    point: Id | None = leaf(
        Polarity.EXACTLY,
        Concern.ACCEPTANCE,
        "inspection point whose limit it is (by its id), for film, tests and words",
    )
    coat: Id | None = leaf(
        Polarity.EXACTLY, Concern.CLIMATE, "coat during which other air is accepted (by its id); every coat if left out"
    )
    film_min: ConcededMinimum | None = part("minimum DFT")
    film_nominal: ConcededMinimum | None = part("nominal DFT, on which ISO 19840, 90-10 and 80-20 are based")
    film_max: ConcededMaximum | None = part("maximum DFT")
    salt: ConcededSalt | None = part("maximum soluble salts")
    dust_quantity: ConcededRating | None = part("maximum dust quantity rating")
    dust_size: ConcededRating | None = part("maximum dust size class")
    profile: ConcededProfile | None = part("surface profile")
    test: ConcededResult | None = part("limit of the test at the point")
    words: ConcededWords | None = part("criterion in words")
    air: ConcededTemperature | None = part("air temperature")
    surface: ConcededTemperature | None = part("surface temperature")
    humidity: ConcededHumidity | None = part("relative humidity")
    dew_point_margin: ConcededMargin | None = part("surface temperature above the dew point")
    agreed_by: Id = leaf(
        Polarity.WAIVER, Concern.DOCUMENT, "person who agreed to it (by the id in the list of people)", required=True
    )
    agreed_on: IsoDate = leaf(Polarity.FACT, Concern.DOCUMENT, "day of the agreement", required=True)
    until: IsoDate = leaf(Polarity.WAIVER, Concern.ACCEPTANCE, "last day of validity", required=True)
    reason: Text = leaf(
        Polarity.REQUIREMENT_TEXT, Concern.DOCUMENT, "reason for accepting the deviation", required=True
    )
    record: Line | None = leaf(
        Polarity.FACT, Concern.DOCUMENT, "letter or minutes in which it is agreed, as in NCR-014"
    )
