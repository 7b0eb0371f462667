"""A blank is explained once, where it begins, and named by its row in all that it empties."""

import copy
import json

from webapp.job.demo import EXAMPLE_JOB
from webapp.sheet.report import job_sheet_text, plan_as_json

MISSING_WIDTH = "Width is missing, face Plate."


def without_a_width():
    job = copy.deepcopy(EXAMPLE_JOB)
    del job["colours"][0]["faces"][0]["width"]
    return job


def reasons(row):
    """Every reason that stands in a plan, row by row."""
    found = [cell["blank_because"] for cell in row.get("cells", {}).values()]
    found += [check["unchecked_because"] for check in row.get("checks", [])]
    rows = [*row.get("colours", []), *row.get("faces", []), *([row["cup"]] if "cup" in row else [])]
    return [each for each in found if each] + [each for below in rows for each in reasons(below)]


def test_the_job_sheet_tells_once_what_is_missing_and_names_it_after_that():
    text = job_sheet_text(without_a_width())
    assert text.count(MISSING_WIDTH) == 1
    assert text.count("blank (Width, face Plate)") > 5


def test_the_figures_for_programs_tell_it_at_the_cell_that_is_blank():
    plan = json.loads(plan_as_json(without_a_width()))
    found = reasons(plan)
    assert plan["colours"][0]["faces"][0]["cells"]["width"]["blank_because"] == MISSING_WIDTH
    assert found.count(MISSING_WIDTH) == 1
    assert found.count("Width, face Plate") > 20


def test_what_has_no_row_yet_is_said_where_it_is_missing():
    job = {**copy.deepcopy(EXAMPLE_JOB), "colours": [{"id": "c1", "name": "Lake green"}]}
    text = job_sheet_text(job)
    assert text.count("Color Lake green has no face yet.") == 1
    assert "blank (no face yet, color Lake green)" in text
