"""Specifications written without a look at the rules: the sound ones raise no error, and what was caught of the faults stays caught.

What was caught at first try stands in `log.yaml`, which is never edited. `still_missed` and `granted` hold what is so today.
"""

from __future__ import annotations

import pytest

from specgen.findings import Severity
from tests.blind.rounds import fault_names, meant, new_findings, sound_names, sound_report

# Errors the writer had to grant: the rule is right, and the specification is kept as it was written.
GRANTED = {
    ("round_1", "bridge-girders"): {"INS013"},  # accepts up to 400 um, where the system allows 360
    # 16 h from 15 degC, where the product asks for 24 h at 10 degC and 12 h at 20 degC
    # and 24 h before handling, where the product asks for 36 h at 10 degC and 16 h at 20 degC
    ("round_1", "water-tank"): {"LAY006", "REL003"},
    ("round_1", "aluminium-bus"): {"INS007"},  # the gauge is said to be zeroed on steel
    ("round_1", "machine-guards"): {
        "REL003"
    },  # 8 h from 16 degC, where the product asks for 12 h at 12 degC and 7 h at 20 degC
    ("round_3", "tool-boxes"): {"REL003"},  # the same
    ("round_1", "ballast-tank"): {"INS013"},  # accepts up to 300 um, where the coat allows 280
    ("round_1", "us-bridge"): {"INS010"},  # five measurement areas on 7440 ft2
    ("round_1", "splash-piles"): {"INS013"},  # accepts up to 600 um, where the coat allows 550
    ("round_2", "buried-pipe"): {"INS013"},  # the same
    ("round_3", "sluice-gate"): {"INS013"},  # accepts up to 300 um, where the coat allows 250
    # 90 readings, where ISO 19840 asks for 110; accepts up to 600 um, where 545 are allowed
    ("round_3", "wind-tower"): {"INS010", "INS013"},
    ("round_3", "brine-tank"): {"INS010"},  # 30 readings, where ISO 19840 asks for 40
    ("round_6", "fire-engine-lockers"): {"INS007"},  # the gauge is said to be zeroed on steel
    # accepts up to 600 um, where 545 are allowed
    ("round_6", "tower sections with stripes and more readings"): {"INS013"},
    ("round_7", "bends ordered and tested at 4 kV"): {"INS013"},  # the same as in the one of round 2 it changes
    # a surfacer of at least 70 um, of which 25 um are sanded off, held to 50 um
    ("round_14", "bus-side-panels"): {"FLM011"},
    ("round_14", "fire-engine-roof"): {"FLM011"},
    # passes written for coats, and a surfacer of at least 80 um, of which 40 um are sanded off, held to 60 um
    ("round_15", "coach-side"): {"FLM008", "FLM011"},
    # passes written for coats
    ("round_28", "tipper-bodies"): {"FLM008"},
    ("round_28", "bus-roof-pods"): {"FLM008"},
}
# Faults that are not told, or not as the writer expected, each with the reason.
STILL_MISSED = {
    ("round_1", "accepted film below the specified one"): "told as a warning, in words that were not written down",
    (
        "round_1",
        "alkyd enamel on zinc silicate",
    ): "told as a warning: the ground is a secondary source, which gives no error",
    (
        "round_2",
        "base coat left without clear",
    ): "told as a warning: the ground is common practice, which gives no error",
    ("round_2", "epoxy and polyurethane at 180 °C"): "told as an error, in words that were not written down",
    ("round_3", "old finish that chalks is painted over"): "no fault: the preparation washes and abrades it",
    ("round_3", "promoter left out on polypropylene"): "told as a warning: the ground is in part common practice",
    ("round_3", "stainless fittings bedded on bare aluminium"): "told as a note: a large anode beside a small cathode",
    (
        "round_3",
        "zinc silicate with no test of its cure and heat of 480 °C",
    ): "told as an error, in words that were not written down",
    (
        "round_6",
        "half the cross coats for the primer of the guards",
    ): "told as a warning: what a cross coat gives is an average",
    (
        "round_6",
        "most humidity typed as least",
    ): "told as a warning: the products' own limit still holds where the job leaves the end open",
    ("round_6", "accepted film thicker than the coats may be"): "told as an error, in words that were not written down",
    (
        "round_7",
        "minutes of flash-off typed as hours",
    ): "told as a warning: the usual time is an estimate, and a longer flash-off than the product's has no published limit",
    (
        "round_7",
        "air for the penstock with a digit lost",
    ): "a note says so: in a confined space no flow is assessed, the test of the air decides",
    (
        "round_7",
        "solvent paint carried as corrosive class 8 only",
    ): "told as a warning: the list of numbers is from memory",
    ("round_8", "tank filled after two days"): "told as a warning: full cure is no stated wait before filling",
    ("round_15", "surfacer-sanded-through"): "told on the sound one already, by a slip of its author",
    ("round_16", "weld-three-passes"): "told as a warning: what a cross coat gives is an average",
    ("round_22", "too-few-spots-for-the-shell"): "told as an error, in words that were not written down",
    ("round_26", "silo-comb-figures-multiplied"): "no misfit: the finish of the same job needs no more on the comb",
    ("round_27", "one-cross-coat"): "told as a warning: what a cross coat gives is an average",
    ("round_28", "spot-limit-of-another-level"): "no fault: a limit for spots that is stricter than that of the level",
    (
        "round_28",
        "eddy-gauge-on-steel",
    ): "told as a warning: gauges of both principles are sold, and some read on steel",
    (
        "round_30",
        "polyurethane-on-old-alkyd",
    ): "no fault in what is stated: a patch held by a limit that looks for lifting",
    ("round_32", "bearings-heated-air-dry"): "told as a warning, in words that were not written down",
    (
        "round_32",
        "gritter-chute-not-insulated",
    ): "told as a note: the pair steel and stainless in the air is told as that; only water and the wide pairs warn",
    ("round_29", "filled-after-36-hours"): "told as a warning: full cure is no stated wait before filling",
    ("round_17", "stoplogs-to-the-weir-after-3-days"): "told as a warning: full cure is no stated wait before service",
}

# Warnings on sound ones that were wrong, and stay away.
WRONG_ONCE = {
    ("round_18", "bus-corner"): {"WIN003", "INS008", "INS013"},  # putty is sanded, ends in nothing, and is what is read
    ("round_18", "tipper-bodies"): {"JOB017"},  # a face that nobody sprays
    ("round_21", "excavator-scratches"): {"JOB018"},  # thin spots get one more cross coat
    ("round_22", "van-doors-metallic"): {"JOB015"},  # what is rubbed through is set aside
    ("round_22", "exhaust-silencers"): {"SUB014"},  # the aluminium coat is a coat
    ("round_23", "crane-boom-spots"): {"INS027"},  # readings of each spot, not of each item
    ("round_24", "galvanised-drawbars"): {"DOC012"},  # days from galvanising, not from sweeping
}


@pytest.mark.parametrize(("of_round", "name"), sound_names())
def test_no_error_on_a_sound_one(of_round: str, name: str) -> None:
    errors = {finding.id for finding in sound_report(name, of_round) if finding.severity is Severity.ERROR}
    assert errors <= GRANTED.get((of_round, name), set())


@pytest.mark.parametrize(("of_round", "name"), WRONG_ONCE)
def test_no_wrong_warning_again(of_round: str, name: str) -> None:
    told = {finding.id for finding in sound_report(name, of_round)}
    assert told.isdisjoint(WRONG_ONCE[of_round, name])


@pytest.mark.parametrize(("of_round", "name"), fault_names())
def test_fault_is_told(of_round: str, name: str) -> None:
    told = [finding for finding in new_findings(name, of_round) if meant(finding, name, of_round)]
    assert bool(told) != ((of_round, name) in STILL_MISSED)
