"""HTML pages in headless Chromium at the width of a phone, a tablet and a desk, judged by axe-core.

    .venv/bin/specgen render specs_demo/tramway --format html --out out
    .venv/bin/python tests/campaigns/screen_pages.py out [--axe FILE]

Prints a line a page and width with its height. It ends with 1 where axe-core finds a violation, where a page is wider than
the window, where a table or figure scrolls that no key reaches, or where what folds does not print open. axe-core is
fetched once from the npm registry, unless --axe names its file; nothing of it is shipped.
"""

from __future__ import annotations

import argparse
import html
import io
import json
import os
import re
import subprocess
import tarfile
import tempfile
import urllib.request
from pathlib import Path
from typing import Any

AXE = "https://registry.npmjs.org/axe-core/-/axe-core-4.10.2.tgz"
WIDTHS = (390, 768, 1280)
_LAST = 40  # signs at the end of a text
CHROMIUM = ("chromium", "--headless", "--no-sandbox", "--disable-gpu", "--allow-file-access-from-files")
# A window of the browser is never narrower than 500 px, a frame in it is.
OUTER = """<!DOCTYPE html><html lang="en"><title>campaign</title><body style="margin:0">
<iframe title="page" src="{src}" style="width:{width}px;height:844px;border:0"></iframe><pre></pre><script>
addEventListener("message", told => {{ document.querySelector("pre").textContent = told.data; }});</script>"""
JUDGE = """addEventListener("load", async () => {
  const root = document.documentElement;
  const overflow = [...document.querySelectorAll(".table-frame, figure, .contents")]
    .filter(one => one.scrollWidth > one.clientWidth + 1 && one.tabIndex < 0 && !one.querySelector("a[href]"))
    .map(one => (one.querySelector("caption, figcaption") || one).textContent.trim().slice(0, 60));
  const height = root.scrollHeight;
  const wide = root.scrollWidth - root.clientWidth;
  document.querySelectorAll("details").forEach(one => { one.open = true; });
  const found = await axe.run(document, {iframes: false});
  const faults = found.violations.map(one =>
    `${one.id} (${one.impact}): ${one.help}: ${one.nodes.slice(0, 3).map(node => node.html.slice(0, 120)).join(" | ")}`);
  parent.postMessage(JSON.stringify({height, open: root.scrollHeight, wide, overflow, faults, checks: found.passes.length}), "*");
});"""


def main() -> int:
    arguments = argparse.ArgumentParser(description=(__doc__ or "").splitlines()[0])
    arguments.add_argument("folder", type=Path)
    arguments.add_argument("--axe", type=Path)
    chosen = arguments.parse_args()
    script = (chosen.axe or fetched()).read_text(encoding="utf-8")
    failed = False
    pages = sorted(chosen.folder.glob("*.html"))
    if not pages:
        raise SystemExit("The folder holds no page.")
    with tempfile.TemporaryDirectory() as scratch:
        for page in pages:
            text = page.read_text(encoding="utf-8")
            for width in WIDTHS:
                told = judged(text, width, script, Path(scratch))
                faults = [*told["faults"], *(f"scrolls, and no key reaches it: {one}" for one in told["overflow"])]
                if told["wide"] > 0:
                    faults.append(f"the page is {told['wide']} px wider than the window")
                print(
                    f"{page.name} at {width} px: {told['height']} px high, {told['open']} px open, {told['checks']} checks passed"
                )
                print(*(f"  {fault}" for fault in faults), sep="\n", end="\n" if faults else "")
                failed = failed or bool(faults)
            if folded := folded_on_paper(text, Path(scratch)):
                print(f"  folded on paper: {folded}")
                failed = True
    return int(failed)


def judged(text: str, width: int, script: str, folder: Path) -> dict[str, Any]:
    (folder / "axe.js").write_text(script, encoding="utf-8")
    (folder / "judge.js").write_text(JUDGE, encoding="utf-8")
    scripts = '<script src="axe.js"></script><script src="judge.js"></script></body>'
    (folder / "page.html").write_text(text.replace("</body>", scripts), encoding="utf-8")
    (folder / "outer.html").write_text(OUTER.format(src="page.html", width=width), encoding="utf-8")
    command = (*CHROMIUM, f"--window-size={max(width, 500)},900", "--virtual-time-budget=60000", "--dump-dom")
    done = subprocess.run(
        (*command, f"file://{folder}/outer.html"), capture_output=True, text=True, check=True, timeout=300
    )
    answer = re.search(r"<pre>(\{.*\})</pre>", done.stdout, re.DOTALL)
    if answer is None:
        raise SystemExit(f"No answer came from the page at {width} px.")
    told: dict[str, Any] = json.loads(html.unescape(answer[1]))
    return told


def folded_on_paper(text: str, folder: Path) -> list[str]:
    """The headings of sections that fold whose last words are missing where the browser prints the page."""
    page, paper = folder / "paper.html", folder / "paper.pdf"
    page.write_text(text, encoding="utf-8")
    subprocess.run(
        (*CHROMIUM, f"--print-to-pdf={paper}", f"file://{page}"), check=True, capture_output=True, timeout=300
    )
    words = subprocess.run(("pdftotext", str(paper), "-"), capture_output=True, text=True, check=True).stdout
    printed = re.sub(r"\W", "", words)
    missing = []
    for fold in re.findall(r"<details>(.*?)</details>", text, re.DOTALL):
        told = [html.unescape(one) for one in re.findall(r">([^<>]{12,})<", fold)]
        # a paragraph may go on over the page, its last line is never alone there
        if any(re.sub(r"\W", "", one)[-_LAST:] not in printed for one in told[-3:]):
            missing.append(told[0])
    return missing


def fetched() -> Path:
    cache = Path(os.environ.get("XDG_CACHE_HOME", Path.home() / ".cache")) / "specgen-campaigns"
    kept = cache / Path(AXE).with_suffix(".js").name
    if not kept.exists():
        with urllib.request.urlopen(AXE, timeout=60) as answer:
            packed = io.BytesIO(answer.read())
        with tarfile.open(fileobj=packed) as package:
            script = package.extractfile("package/axe.min.js")
            assert script is not None
            cache.mkdir(parents=True, exist_ok=True)
            kept.write_bytes(script.read())
    return kept


if __name__ == "__main__":
    raise SystemExit(main())
