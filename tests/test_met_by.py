"""Shown or gone: a person meets every formula, input and check, or the issue that brings it is named."""

import re
from dataclasses import replace

import pytest

from tests.met_by import checks_met, figures, met_by, printed, totals
from tests.met_later import MET_LATER
from tests.whole_app import the_app

HEAT_CURVE = "sheet/heat-curve.js"


@pytest.fixture(scope="module")
def app():
    return the_app()


def nobody_meets(app):
    return {name for name, ways in met_by(app).items() if not ways}


def test_what_is_worked_out_is_shown_or_waits_for_the_issue_that_brings_it(app):
    assert sorted(nobody_meets(app) - set(MET_LATER)) == []


def test_what_waits_for_an_issue_is_met_by_nobody_yet(app):
    assert sorted(set(MET_LATER) - nobody_meets(app)) == []


def test_no_figure_stands_in_a_template_that_the_page_never_takes_in(app):
    apart = [mark for mark in app.everywhere if mark not in app.marks]
    assert [mark for mark in apart if "data-cell" in mark.attributes] == []


def test_a_figure_that_leaves_the_page_leaves_its_inputs_to_nobody(app):
    without = replace(app, page=app.page.replace('data-cell="dew_point_error"', ""))
    lost = {"dew_point_error", "hygrometer_error"}
    assert nobody_meets(without) - nobody_meets(app) == lost


def test_a_field_alone_does_not_meet_anybody(app):
    assert 'data-field="volume_on_hand"' in app.page
    assert "volume_on_hand" in nobody_meets(app)


def test_a_figure_at_a_level_that_has_no_such_cell_is_met_by_nobody(app):
    there = 'data-cell="allowed_difference"'
    assert there in app.page
    without = replace(app, page=app.page.replace(there, f'{there} data-level="job"'))
    assert "allowed_difference" in nobody_meets(without) - nobody_meets(app)


def test_a_figure_in_a_template_that_the_page_never_takes_in_is_met_by_nobody(app):
    without = replace(app, page=app.page.replace('data-late="lab-card"', ""))
    assert "hardener_phr" in nobody_meets(without)


def test_a_check_without_its_place_is_met_by_nobody(app):
    without = replace(app, page=re.sub(r'data-checks="[^"]*"', 'data-checks=""', app.page))
    assert {"film_too_deep", "wet_edge_lost"} <= nobody_meets(without)
    assert checks_met(without)["edge_may_spill"] == ["fold"]
    assert checks_met(without)["below_dew_point"] == ["fold", "bench"]


def test_a_formula_that_no_curve_calls_is_met_by_nobody(app):
    without = replace(app, modules={name: text for name, text in app.modules.items() if name != HEAT_CURVE})
    assert {"conversion_rate", "heating_rate"} <= nobody_meets(without) - nobody_meets(app)


def test_a_name_in_a_comment_shows_nothing(app):
    rest = {name: text for name, text in app.modules.items() if name != HEAT_CURVE}
    said = replace(
        app, modules={**rest, HEAT_CURVE: "/** Uses conversion_rate. */\nrun(); // and heating_rate\n"}
    )
    assert {"conversion_rate", "heating_rate"} <= nobody_meets(said)


def test_what_the_bench_shows_and_the_page_does_not_is_met_there(app):
    found = met_by(app)
    assert "bench" in found["part_a_volume"]
    assert not {"page", "print", "plan"} & set(found["part_a_volume"])
    assert "bench" in found["mix_time"]


def test_paper_is_a_sheet_of_its_own_and_leaves_out_what_is_folded_away(app):
    on_page, on_paper = figures(app), printed(app)
    assert ("cup", "reading_a") in on_paper
    assert ("job", "hardener_phr") in on_page - on_paper
    assert ("face", "edge_length") in on_page - on_paper


def test_the_totals_add_up_to_the_sheet(app):
    [*_, nobody, whole] = [line.split() for line in totals(app)]
    assert whole[-1] == str(len(app.sheet.book.checks))
    assert sum(map(int, nobody[-4:])) == len(MET_LATER)
