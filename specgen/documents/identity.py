"""Whose document it is, as one sees it: logo, colour of the bar, colour of the rules. Called by `printing` for every document.

The colour carries no meaning. The bar has it as given; a rule, which is thin, is darkened until it stands out from white paper.
"""

from __future__ import annotations

from dataclasses import dataclass

from specgen.model.spec import Spec

# of WCAG 2.1, success criterion 1.4.11, for what is no text; a bar is broad and may be paler, but has to be there (common practice)
_CONTRAST, _SEEN = 3.0, 1.25


@dataclass(frozen=True, slots=True, kw_only=True)
class Identity:
    """`logo` is the address of the picture; what is empty is not there, and the page has ink in its place."""

    maker: str
    logo: str
    bar: str
    rule: str


def identity(spec: Spec) -> Identity:
    project = spec.project
    picture = spec.pictures.get(project.logo) if project.logo is not None else None
    colour = project.brand_colour or ""
    return Identity(
        maker=project.maker.name,
        logo=picture.address if picture is not None else "",
        bar=bar_colour(colour) if colour else "",
        rule=rule_colour(colour) if colour else "",
    )


def bar_colour(colour: str) -> str:
    """The colour as stated, unless nobody would see it on white paper."""
    return _darkened(colour, _SEEN)


def rule_colour(colour: str) -> str:
    """The colour, darkened until it has the contrast of a line on white."""
    return _darkened(colour, _CONTRAST)


def _darkened(colour: str, contrast: float) -> str:
    """In steps of 2 %, until it has that contrast on white."""
    parts = [int(colour[at : at + 2], 16) for at in (1, 3, 5)]
    for step in range(50):
        dark = [round(part * (50 - step) / 50) for part in parts]
        if _on_white(dark) >= contrast:
            break
    return "#" + "".join(f"{part:02x}" for part in dark)


def _on_white(parts: list[int]) -> float:
    """The contrast ratio of WCAG 2.1 between a colour and white."""
    shares = [part / 255 for part in parts]
    linear = [share / 12.92 if share <= 0.04045 else ((share + 0.055) / 1.055) ** 2.4 for share in shares]
    red, green, blue = linear
    return 1.05 / (0.2126 * red + 0.7152 * green + 0.0722 * blue + 0.05)
