"""What of the hazard tables is from memory still stands in DEVELOPERS.md, and nothing else does."""

from __future__ import annotations

import re
from pathlib import Path

from specgen.standards.citations import Basis
from specgen.standards.tables import table, table_names
from tests.trade.test_hazard_tables import COUNTS

TEXT = (Path(__file__).parents[2] / "DEVELOPERS.md").read_text("utf-8")
SECTION = TEXT.partition("## From memory still")[2].partition("\n## ")[0]
# Beside those whose rows are counted: tables of hazards, air and emissions.
MORE = {
    "aerosol_storage_levels", "banned_substances", "chemical_heats", "euh_statements", "gloves_unfit", "h_statements",
    "harmonised_classes", "label_dates", "mixing_factors", "p_statements", "particle_filters", "protection_factors",
    "reactivity_bins_aliphatic", "reactivity_bins_aromatic", "reactivity_limits_california", "reactivity_limits_us",
    "reactivity_rules", "relabelling_times", "voc_exempt_us", "voc_limits_eu", "voc_limits_us_refinish_metric",
}  # fmt: skip


def test_figures_from_memory_are_listed_with_their_effect() -> None:
    listed = {
        name
        for line in SECTION.splitlines()
        if line.startswith("| `")
        for name in re.findall(r"`(\w+)`", line.split("|")[1])
    }
    looked_at = ({*COUNTS} | MORE) & {*table_names()}
    from_memory = {
        name
        for name in looked_at
        if any(table(name).row_citation(row).basis is Basis.MEMORY for row in table(name).rows)
    }
    assert listed == from_memory
