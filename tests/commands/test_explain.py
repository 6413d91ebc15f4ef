"""`specgen explain`: a page, the list of them, a table, and what is nearest to a slip."""

from __future__ import annotations

import re
from pathlib import Path
from shutil import copytree

import pytest

from specgen.commands import main
from specgen.report.explanations import explanations
from tests.good_spec import DEMO_RANGE

_GOOD = Path(__file__).parents[1] / "good"


@pytest.mark.parametrize("asked", ["FLM002", "flm002", "SRC017", "MOD003", "WVR001", "RUN001"])
def test_page(asked: str, capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["explain", asked]) == 0
    assert capsys.readouterr() == (explanations()[asked.upper()].text(), "")


def test_list(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["explain", "--list"]) == 0
    lines = capsys.readouterr().out.splitlines()
    assert len(lines) == len(explanations())
    assert all(re.fullmatch(r"[A-Z]{3}[0-9]{3}  (error  |warning|note   )  \S.*", line) for line in lines)
    assert "FLM002  warning  A coat with a minimum DFT has a maximum" in lines
    assert lines == sorted(lines)


def test_table(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["explain", "table:materials"]) == 0
    assert capsys.readouterr().out.startswith("Materials of parts (table:materials)\n")


@pytest.mark.parametrize(
    ("asked", "said"),
    [
        ("FLM02", "there is no page for 'FLM02'; nearest: FLM0"),
        ("nothing", "there is no page for 'nothing'; `specgen explain --list` lists them"),
        ("table:material", "there is no table 'material'; nearest: table:materials"),
        ("table:../documents", "there is no table '../documents'; "),
        ("table:", "there is no table ''; there are: "),
    ],
)
def test_unknown(asked: str, said: str, capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["explain", asked]) == 2
    printed = capsys.readouterr()
    assert printed.out == ""
    assert printed.err.startswith(f"specgen: {said}")
    assert printed.err.count("\n") == 1


GOOD = str(Path(__file__).parents[1] / "good")


def test_working_with_its_chain(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["explain", "working:packs.primer.grey", "--job", "refit", "--path", GOOD]) == 0
    out = capsys.readouterr().out.replace("\N{NO-BREAK SPACE}", " ")
    assert out.startswith(
        "cans required (working:packs.primer.grey)\n"
        "  rounded up (A₁ × DFT₁ ÷ (S × d ÷ 100 × TE ÷ 100))\n"
        "  = rounded up (1.2 × 60 ÷ (70.66 × 97 ÷ 100 × 60 ÷ 100))\n"
        "  = 2 cans\n"
    )
    names = [line.partition("(working:")[2].rstrip(")") for line in out.splitlines() if "(working:" in line]
    assert names == ["packs.primer.grey", "area.DOOR", "solids.primer.grey", "area.DOOR.skin", "solids-in-can.primer"]
    assert "  = 17.7 %, inputs withheld by the manufacturer\n" in out
    assert "composition" not in out


def test_working_for_the_maker_shows_the_composition(capsys: pytest.CaptureFixture[str]) -> None:
    call = ["explain", "working:solids-in-can.primer", "--job", "refit", "--path", GOOD, "--for", "maker"]
    assert main(call) == 0
    assert "products.primer.composition.gas.density" in capsys.readouterr().out


def test_workings_of_a_job_are_listed(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["explain", "working:", "--job", "refit", "--path", GOOD]) == 0
    assert "working:area.DOOR  area to coat, 1.20\N{NO-BREAK SPACE}m²\n" in capsys.readouterr().out


@pytest.mark.parametrize(
    ("call", "said"),
    [
        (["working:packs.primer.grey"], "name whose figure it is, as in --job refit or --product primer"),
        (["working:x", "--job", "refi", "--path", GOOD], "there is no whole job 'refi'; there is: refit"),
        (["working:packs.primer.gray", "--job", "refit", "--path", GOOD], "the job has no working 'packs.primer.gray'; nearest: working:packs.primer.grey"),
        (["working:x", "--job", "refit", "--path", "/nowhere"], "/nowhere"),
        (["--product", "primr", "--path", GOOD], "there is no whole product 'primr'; there is: primer, base"),
        (["working:x", "--product", "primer", "--path", GOOD], "the product has no working 'x'"),
    ],
)  # fmt: skip
def test_working_that_cannot_be_shown(call: list[str], said: str, capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["explain", *call]) == 2
    assert said in capsys.readouterr().err


def test_workings_of_a_product_are_listed(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["explain", "--product", "primer", "--path", GOOD]) == 0
    shown = capsys.readouterr().out
    assert "working:wet.primer  wet film thickness, 50\N{NO-BREAK SPACE}µm\n" in shown
    # what stands behind the label would give the composition back
    assert "primer.aerosol" not in shown
    assert main(["explain", "--product", "primer", "--path", GOOD, "--for", "maker"]) == 0
    assert "working:primer.aerosol.flammable_at_most  flammable components at most, 100.0\N{NO-BREAK SPACE}%\n" in (
        capsys.readouterr().out
    )


def test_where_values_are_stated(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    copytree(_GOOD, tmp_path / "specs")
    more = "systems:\n- {id: twin, based_on: cab, layers: [{id: base, passes: 3}],\n   without: [layers.primer, layers.clear, total, handle_after]}\n"
    (tmp_path / "specs" / "more.yaml").write_text(more)
    path = ["--path", str(tmp_path / "specs")]
    assert main(["explain", "systems.twin", *path]) == 0
    lines = [" ".join(line.split()) for line in capsys.readouterr().out.splitlines()]
    assert lines == [
        "id twin more.yaml:2",
        "title Primer, base coat and clear job.yaml:11 (of cab)",
        "layers.base.id base more.yaml:2",
        "layers.base.role basecoat job.yaml:14 (of cab)",
        "layers.base.product base job.yaml:14 (of cab)",
        "layers.base.variant standard job.yaml:14 (of cab)",
        "layers.base.film.min 15 um job.yaml:14 (of cab)",
        "layers.base.film.nominal 20 um job.yaml:14 (of cab)",
        "layers.base.film.max 30 um job.yaml:14 (of cab)",
        "layers.base.passes 3 more.yaml:2",
        "layers.base.overcoat_interval 20 min..24 h job.yaml:14 (of cab)",
        "service_after 7 days job.yaml:18 (of cab)",
        "twin is based on cab.",
    ]
    assert main(["explain", "systems.twin.layers.base.film.max", *path]) == 0
    assert " ".join(capsys.readouterr().out.split()) == "layers.base.film.max 30 um job.yaml:14 (of cab)"
    for asked, said in [
        (
            "systems.twin.total",
            "systems.twin.total states nothing; `specgen explain systems.twin` lists what is stated",
        ),
        ("systems.twn", "there is no whole record 'twn' in systems; there is: cab, chassis, twin"),
    ]:
        assert main(["explain", asked, *path]) == 2
        assert said in capsys.readouterr().err


def test_where_values_are_stated_withholds_what_is_the_makers(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["explain", "products.primer", "--path", str(_GOOD)]) == 0
    assert "composition" not in capsys.readouterr().out
    assert main(["explain", "products.primer.composition.gas", "--path", str(_GOOD), "--audience", "maker"]) == 0
    assert "composition.gas.mass_share" in capsys.readouterr().out


def test_what_stays_with_a_base_is_listed(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    copytree(_GOOD, tmp_path / "specs")
    more = "products: [{id: p2, based_on: primer, name: N, direct_to_metal: no, variants: [{id: v, name: v, order_number: O}]}]"
    (tmp_path / "specs" / "more.yaml").write_text(more)
    assert main(["explain", "products.p2", "--path", str(tmp_path / "specs")]) == 0
    *_, last = capsys.readouterr().out.splitlines()
    assert (
        last
        == "Not carried over unless named under including: direct_to_metal, variants, voc.content, voc.categories, hazards."
    )


def test_the_records_of_a_kind_are_listed(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["explain", "systems", "--path", str(_GOOD)]) == 0
    listed = capsys.readouterr().out.splitlines()
    assert [line.split()[0] for line in listed] == ["cab", "chassis"]
    assert all(len(line.split()) > 1 for line in listed)


def test_a_system_is_listed_with_what_it_is_for(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["explain", "systems", "--path", str(DEMO_RANGE)]) == 0
    (line,) = [line for line in capsys.readouterr().out.splitlines() if line.startswith("locker-grey ")]
    assert (
        line.split("  ", 1)[1]
        .strip()
        .endswith(
            "direct to steel, with clearcoat (Tool lockers, drawers and trim inside the cab, out of sunlight. One colour coat direct to abraded steel.)"
        )
    )


def test_one_value_asked_for_alone_is_shown_in_full(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    copytree(_GOOD, tmp_path / "specs")
    job = tmp_path / "specs" / "job.yaml"
    long = (
        "Repainting of doors and steps after repair; seals and locks stay masked until the last coat is dry to handle."
    )
    job.write_text(job.read_text().replace("Repainting of doors and steps after repair.", f'"{long}"'))
    assert main(["explain", "jobs.refit.scope", "--path", str(tmp_path / "specs")]) == 0
    assert long in capsys.readouterr().out
