"""5,000 test reports against 2,000 claims: seconds of CPU for the evidence rules, and for reading and judging the folder as a whole.

    .venv/bin/python tests/campaigns/evidence_speed.py

Every twentieth claim has a fault, and each has to be told; no rule on evidence may tell anything else. The whole ends with 1 where one
is missing, or where the rules on evidence take longer than 5 s.
"""

from __future__ import annotations

import sys
import tempfile
import time
from datetime import date
from pathlib import Path

from specgen.model.parse import load, without_collector
from specgen.rules.declare import all_rules
from specgen.rules.run import run_rules

REPORTS, CLAIMS, PRODUCTS, MOST_SECONDS = 5_000, 2_000, 20, 5.0
ON = date(2026, 11, 25)
DEMO = Path(__file__).resolve().parents[2] / "specs_demo" / "evidence"


def main() -> int:
    with tempfile.TemporaryDirectory() as folder:
        _write(Path(folder))
        begun = time.process_time()
        with without_collector():
            loaded = load(Path(folder))
        read = time.process_time() - begun
        errors = [one for one in loaded.findings if one.severity.weight > 1]
        rules = [rule for rule in all_rules() if rule.id.startswith("EVD")]
        begun = time.process_time()
        # as `specgen check` does
        with without_collector():
            found = run_rules(loaded, ON, rules)
            judged = time.process_time() - begun
            run_rules(loaded, ON, [rule for rule in all_rules() if rule not in rules])
        whole = read + time.process_time() - begun
    told = sorted(one.path for one in found)
    wanted = sorted(f"products.p{at % PRODUCTS}.claims.c{at}.evidence" for at in range(0, CLAIMS, 20))
    print(
        f"{REPORTS} reports, {CLAIMS} claims: read in {read:.1f} s of CPU, evidence judged in {judged:.1f} s, with every other rule {whole:.1f} s"
    )
    print(f"{len(told)} findings, {len(wanted)} faults put in")
    if errors or told != wanted:
        print([one.what for one in errors][:3], [path for path in told if path not in wanted][:5])
        return 1
    return 0 if judged <= MOST_SECONDS else 1


def _write(folder: Path) -> None:
    (folder / "project.yaml").write_text((DEMO / "claim_allowed" / "project.yaml").read_text())
    product = (DEMO / "claim_refused" / "products.yaml").read_text().partition("    claims:\n")[0]
    head, _, body = product.partition("  - id: barrier\n")
    products = [head]
    for at in range(PRODUCTS):
        products.append(f"  - id: p{at}\n" + body.replace("DS-40", f"DS-{at}").replace("EX-barrier", f"EX-{at}"))
        products.append("    claims:\n")
        products.extend(_claim(number) for number in range(at, CLAIMS, PRODUCTS))
    (folder / "products.yaml").write_text("".join(products))
    for part in range(0, REPORTS, 500):
        rows = "".join(_report(at) for at in range(part, part + 500))
        (folder / f"reports_{part}.yaml").write_text("reports:\n" + rows)


def _claim(number: int) -> str:
    hours = 481 if number % 20 == 0 else 480
    return (
        f'      - {{id: c{number}, text: "Creep after salt spray 2 mm or less.", test: {{method: scribe_creep, '
        f"after: {{method: nss, duration: {hours} h}}, condition: {{substrate: steel_blasted, film: 70..90 um}}, limit: max 2 mm, "
        f"statistic: mean}}, evidence: {{report: r{number}}}}}\n"
    )


def _report(at: int) -> str:
    values = ", ".join(f"{{id: P{n}, value: 1.{(at + n) % 9} mm}}" for n in range(3))
    return (
        f"  - {{id: r{at}, number: R-{at}, title: Salt spray, laboratory: {{name: Laboratory, address: 1 Road}}, "
        "dates: {started: 2026-02-01, ended: 2026-03-01, issued: 2026-03-05}, signed_by: A. Person, "
        f"series: [{{id: s, panels: 3, substrate: steel_blasted, grade: Sa 2 1/2, scribe: one vertical line 1 mm wide, coats: [{{id: c, product: p{at % PRODUCTS}, "
        "formulated: 2025-06-02, batch: B1, film: 80 um}], cure: {time: 7 days}}], "
        'tests: [{id: t, series: s, method: scribe_creep, standard: ISO 4628-8, edition: "2012", '
        f"after: {{method: nss, duration: 480 h}}, results: [{values}]}}]}}\n"
    )


if __name__ == "__main__":
    sys.exit(main())
