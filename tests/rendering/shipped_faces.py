"""The faces that ship, as the style sheet must declare them. Called by the tests of fonts."""

from __future__ import annotations

# file, CSS weight, CSS style
FACES = (
    ("fonts/SourceSansPro-Regular.ttf", "400", "normal"),
    ("fonts/SourceSansPro-Semibold.ttf", "600", "normal"),
    # This face has no Greek: the typesetter slants the upright face for it, which a test holds it to.
    ("fonts/SourceSansPro-It.ttf", "400", "italic"),
)
