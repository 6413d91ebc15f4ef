"""The versions recorded with an issue are those of the libraries that set the pages."""

from __future__ import annotations

import ctypes
import importlib.metadata
import subprocess
import sys
from pathlib import Path

from specgen.rendering.engine_versions import EngineVersions, engine_versions
from specgen.rendering.pdf import typesetter


def test_the_versions_are_what_the_libraries_say_of_themselves() -> None:
    typesetter()  # which also makes the libraries known to the process
    said = []
    for library, function in (("libpango-1.0.so.0", "pango_version_string"), ("libharfbuzz.so.0", "hb_version_string")):
        ask = getattr(ctypes.CDLL(library), function)
        ask.restype = ctypes.c_char_p
        said.append(ask().decode())
    assert engine_versions() == EngineVersions(importlib.metadata.version("weasyprint"), *said)


def test_importing_the_module_loads_no_typesetter() -> None:
    code = "import sys, specgen.rendering.engine_versions; print('weasyprint' in sys.modules)"
    run = subprocess.run(
        [sys.executable, "-c", code], cwd=Path(__file__).parents[2], capture_output=True, text=True, check=True
    )
    assert run.stdout == "False\n"
