"""The command line is how others check our figures: its names are the handbook's."""

import json
import re

import pytest

from webapp.cli import main
from webapp.formulas.book import load_book
from webapp.job.demo import EXAMPLE_JOB
from webapp.sheet.reasons import sentence

HANDBOOK_FACE = ("film_volume", "face_volume", "face_area", "coats", "edge_hold_depth", "levelling_time")
HANDBOOK_COLOUR = (
    "net_need", "claim_film_share", "claim_need", "full_cup", "full_cup_residue", "cup_residue",
    "cup_limit", "cups", "colour_need",
)  # fmt: skip
HANDBOOK_CUP = (
    "cup_volume",
    "part_a_volume",
    "part_b_volume",
    "part_a_mass",
    "part_b_mass",
    "tint_limit_drops",
)
HANDBOOK_JOB = (
    "dew_point",
    "dew_margin",
    "working_time",
    "pour_time",
    "tack_free_time",
    "recoat_opens",
    "cure_time",
)


@pytest.fixture
def job_file(tmp_path):
    file = tmp_path / "job.json"
    file.write_text(json.dumps(EXAMPLE_JOB), encoding="utf-8")
    return file


def test_plan_prints_the_tree_with_the_handbooks_names(job_file, capsys):
    assert main(["plan", str(job_file)]) == 0
    job = json.loads(capsys.readouterr().out)
    colour = job["colours"][0]
    for row, names in (
        (job, HANDBOOK_JOB),
        (colour, HANDBOOK_COLOUR),
        (colour["cup"], HANDBOOK_CUP),
        (colour["faces"][0], HANDBOOK_FACE),
    ):
        found = {**job["cells"], **row["cells"]}
        assert [name for name in names if name not in found] == []
        assert {"value", "unit", "blank_because"} <= set(row["cells"][next(iter(row["cells"]))])
    # 15 3/4 in by 11 1/2 in at 1/16 in is 11.3203125 in3, and 1 in3 is 16.387064 cm3: geometry, NIST SP 811
    assert colour["faces"][0]["cells"]["film_volume"]["value"] == pytest.approx(185.507, abs=5e-4)


def test_plan_prints_the_job_sheet_for_people(job_file, capsys):
    assert main(["plan", str(job_file), "--text"]) == 0
    text = capsys.readouterr().out
    assert "Film of all faces:            6.27 fl oz (186 mL)" in text
    assert "data sheet" in text


def test_a_file_that_is_no_job_is_refused_in_a_sentence(tmp_path, capsys):
    file = tmp_path / "letter.txt"
    file.write_text("Dear sign maker", encoding="utf-8")
    assert main(["plan", str(file)]) == 1
    assert "letter.txt: This is no job file: it is not JSON." in capsys.readouterr().err


def test_the_book_names_every_formula_and_check_with_its_source(capsys):
    assert main(["book"]) == 0
    text = capsys.readouterr().out
    for name, row in load_book().formulas.items():
        assert f"({name})" in text
        assert " ".join(row.source.split()[:2]) in text
    for row in load_book().checks.values():
        assert " ".join(sentence(row.says).split()[:3]) in text
    assert not re.search(r"[{}]", text)
