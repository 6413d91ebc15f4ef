"""Every value of a closed list that a document can print has a word for it."""

from __future__ import annotations

import importlib
import inspect
import pkgutil
from enum import StrEnum

import specgen.model
from specgen.documents.parts.wording import WORDS, Words
from specgen.model.application import Method
from specgen.model.hazards import Task
from specgen.model.product import PackForm
from specgen.model.schedule import Work
from specgen.units.locale import ENGLISH

# Lists whose values no document prints by name, each with the reason.
NOT_PRINTED = {
    "Audience": "declared of a leaf, never a value of a source",
    "Concern": "declared of a leaf, never a value of a source",
    "Polarity": "declared of a leaf, never a value of a source",
    "Ingredient": "the maker's, and never in a document",
    "PageSize": "chooses the paper",
    "Calculations": "chooses where the calculations stand",
    "Language": "chooses the catalogue of messages",
    "Users": "no document prints it; rules judge by it",
    "FilmUnit": "chooses a unit, which prints its sign",
    "TemperatureUnit": "chooses a unit, which prints its sign",
    "AreaUnit": "chooses a unit, which prints its sign",
    "LengthUnit": "chooses a unit, which prints its sign",
    "VolumeUnit": "chooses a unit, which prints its sign",
    "VocUnit": "chooses a unit, which prints its sign",
    "DensityUnit": "chooses a unit, which prints its sign",
    "StripeTime": "the coat table says it in a sentence of its own",
    "NumberingScheme": "chooses how revisions are counted",
    "ShapeKind": "a working names the shape in its own words",
    "DeadVolumeTable": "chooses a table, which a working cites",
    "Corrosivity": "a category is printed by its own sign",
    "Immersion": "a category is printed by its own sign",
    "FilmConversion": "how films are converted is seen by the figures",
    "SupplyKind": "a supply is listed by its name",
    "PatchResult": "a document says it in a sentence",
    "ApprovalRole": "an approval is said in a word of the view",
    "RevisionGround": "chooses what asks for a revision",
    "Each": "says which figure of the criterion a limit is: a reading's or a spot measurement's",
    "Involvement": "the inspection plan prints a letter and explains it in its legend",
    "Means": "the conformity report says in a sentence how means are held against limits",
    "DecisionRule": "the test report says it in a sentence",
    "Statistic": "results say it in words of their own, with the share or number",
    "TapeClass": "a class is printed by its own sign",
}


def _lists() -> dict[str, type[StrEnum]]:
    modules = [
        importlib.import_module(f"specgen.model.{found.name}") for found in pkgutil.iter_modules(specgen.model.__path__)
    ]
    return {
        name: kind
        for module in modules
        for name, kind in inspect.getmembers(module, inspect.isclass)
        if issubclass(kind, StrEnum) and kind is not StrEnum and kind.__module__ == module.__name__
    }


def test_every_value_has_a_word() -> None:
    missing = [
        str(value)
        for name, kind in _lists().items()
        if name not in NOT_PRINTED
        for value in kind
        # by the list, for values of two lists may be spelt alike
        if (kind, value) not in WORDS
    ]
    assert missing == []


def test_no_exemption_is_stale() -> None:
    lists, worded = _lists(), {kind for kind, _ in WORDS}
    stale = [name for name in NOT_PRINTED if name not in lists or lists[name] in worded]
    assert stale == []


def test_no_word_is_empty() -> None:
    assert [value for (_, value), word in WORDS.items() if not word.strip()] == []


def test_values_spelt_alike_have_their_own_words() -> None:
    words = Words(ENGLISH, {})
    assert [words.word(PackForm.AEROSOL), words.word(Method.AEROSOL)] == ["can", "aerosol can"]
    assert [words.word(Work.SANDING), words.word(Task.SANDING)] == ["sanding", "Sanding"]
