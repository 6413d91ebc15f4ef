"""Sentences of a scope that contradict what is typed, each told by the rule that holds the two against each other, and sound ones."""

from __future__ import annotations

import pytest

from tests.blind.rounds import report, sound

OF_JOB = {
    "roller": ("round_30", "old-roller"),
    "tipper": ("round_30", "tipper-bodies"),
    "tanker": ("round_30", "vacuum-tanker-lining"),
    "crane": ("round_30", "crane-booms"),
}
WRONG = [
    ("roller", "The roller goes back to work on the road the next morning.", "DOC009"),
    ("roller", "The roller is back on the road the day after.", "DOC009"),
    ("roller", "It returns to the site after two days.", "DOC009"),
    ("roller", "Wash the roller with the pressure washer the next day.", "DOC009"),
    ("tipper", "The bodies carry gravel from the third day on.", "DOC009"),
    ("tipper", "The first load is tipped two days after the finish.", "DOC009"),
    ("tipper", "Bodies are turned over two hours after the finish.", "DOC009"),
    ("crane", "Sections are stacked on timber the same evening.", "DOC009"),
    ("tipper", "Bodies are sprayed early in the morning at 8 °C.", "DOC009"),
    ("tipper", "At night the hall may fall to 2 °C while the film dries.", "DOC009"),
    ("tipper", "Bodies come in at 2 °C and are sprayed.", "DOC009"),
    ("tanker", "The lining is thinned with 10 % thinner.", "DOC009"),
    ("tipper", "A litre of Thinner E goes to five litres of primer.", "DOC009"),
    ("tipper", "The finish follows after an hour.", "DOC010"),
    ("tipper", "All three coats are sprayed on the same day.", "DOC010"),
    ("tipper", "Primer in the morning and finish in the afternoon.", "DOC010"),
    ("tanker", "Base and hardener are mixed in equal parts.", "DOC010"),
    ("tanker", "Mix four parts of base with one part of hardener.", "DOC010"),
    ("tanker", "Base and hardener are mixed 3 to 1 by volume.", "DOC010"),
    ("tipper", "The finish is laid at 120 µm.", "DOC006"),
    ("crane", "The zinc is laid 6 mil thick.", "DOC006"),
    ("tanker", "The barrels carry diesel.", "DOC011"),
    ("tipper", "Hinge bores and seats of the ram get the finish as well.", "DOC013"),
    ("tipper", "Bodies are sprayed in the yard.", "DOC014"),
    ("tanker", "The lining is a polyurethane.", "DOC006"),
]
SOUND = [
    ("roller", "The roller goes back to work on the road after 7 days."),
    ("roller", "The painters are back at work the next morning."),
    ("roller", "The roller is driven out of the booth the next day and stands in the hall for a week."),
    ("roller", "It is not washed for two weeks after it is back in service."),
    ("tipper", "Bodies are moved on their trolleys to the drying bay the same evening."),
    ("tipper", "Each body is turned the day after and sprayed from below."),
    ("crane", "The crane works again a day after the load test."),
    ("tanker", "The tankers are filled for the first time 7 days after the second coat."),
    ("tipper", "All three coats are laid within one week."),
    ("tanker", "Air is read in the morning and in the afternoon, before each coat."),
    ("tipper", "Bodies that come in at 4 °C are warmed to 15 °C and sprayed then."),
    ("tipper", "Full cure takes 14 days at 10 °C and 7 days at 20 °C."),
    ("tipper", "Once the film is hard the hall may fall to 5 °C."),
    ("tanker", "One part of hardener is mixed with two parts of base."),
    ("tanker", "Mixed paint is stirred for two to three minutes."),
    ("tanker", "The lining is not thinned, a litre of thinner stands by to clean the pump."),
    ("tipper", "Half a litre of thinner to ten litres of finish is the most."),
    ("tipper", "The finish is sprayed on 180 µm of epoxy."),
    ("tanker", "The barrels are filled with tap water to test them."),
    ("tanker", "The barrels carry sewage and slurry."),
    ("tipper", "The faces around the hinge bores get the finish as well."),
    ("tipper", "Bodies are blasted in the yard and sprayed in the shop."),
    ("tipper", "Coated bodies stand in the yard until they are fetched."),
    ("tanker", "The lining is an epoxy free of solvent."),
]


def _told(of: str, sentence: str) -> set[str]:
    of_round, name = OF_JOB[of]
    spec = sound(name, of_round)
    before = {finding.id for finding in report(spec)}
    spec["jobs"][0]["scope"] += f" {sentence}"
    return {finding.id for finding in report(spec)} - before


@pytest.mark.parametrize(("of", "sentence", "rule"), WRONG)
def test_a_contradiction_is_told_once(of: str, sentence: str, rule: str) -> None:
    assert _told(of, sentence) == {rule}


@pytest.mark.parametrize(("of", "sentence"), SOUND)
def test_what_agrees_is_not_told(of: str, sentence: str) -> None:
    assert not _told(of, sentence)
