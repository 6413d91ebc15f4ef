"""What an item meets in service, in words: `outdoors, immersed in fresh water (Im1)`. Printed in the table of items."""

from __future__ import annotations

from collections.abc import Iterator

from specgen.documents.parts.wording import Words
from specgen.facts.job.exposure import environment_of, exposure_of
from specgen.model.environment import Environment
from specgen.model.job import Item, Job
from specgen.standards.tables import table


def exposed(job: Job, item: Item, words: Words) -> str:
    """Exposure and environment in force for an item, empty where neither is stated."""
    exposure, environment = exposure_of(job, item), environment_of(job, item)
    stated = [words.word(exposure)] if exposure is not None else []
    if environment is not None:
        stated += _environment(environment, words)
    return ", ".join(stated)


def _environment(environment: Environment, words: Words) -> Iterator[str]:
    yield words.word(environment.kind)
    if environment.medium is not None:
        yield words.word(environment.medium)
    if environment.category is not None:
        named = words(table("exposure_categories").row("id", environment.category)["name"])
        yield f"{environment.category} ({named})"
    if environment.sun is not None:
        yield words("in the sun") if environment.sun else words("not in the sun")
