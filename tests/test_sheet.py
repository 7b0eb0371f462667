"""The sheet wires formulas by name, keeps every blank's reason, and never lets a half-typed face pass."""

import pytest

from webapp.errors import SheetError
from webapp.formulas.book import book_of, check, formula, valid_range
from webapp.formulas.constant import Constant
from webapp.inputs.entry import Input
from webapp.sheet.choices import Choice, Pick
from webapp.sheet.reasons import because
from webapp.sheet.runner import calculate
from webapp.sheet.wiring import wire
from webapp.units import Centimetres, CubicCentimetres, Share, SquareCentimetres, Truth

INPUTS = {
    row.name: row
    for row in (
        Input("extra", "Extra", "bench", "share", unit="%", least="0 %", most="100 %", default="10 %"),
        Input("bench_height", "Bench", "bench", "length", unit="cm", least="1 cm", most="3 m"),
        Input("stool_height", "Stool", "bench", "length", unit="cm", fallback_input="bench_height"),
        Input("width", "Width", "shape", "length", unit="cm", least="1 mm", most="30 m"),
        Input("height", "Height", "shape", "length", unit="cm", least="1 mm", most="30 m"),
        Input("depth", "Depth", "face", "length", unit="cm", least="0.1 mm", most="50 mm"),
        Input(
            "shape",
            "Shape",
            "shape",
            "choice",
            default="whole",
            options=(("whole", "Whole"), ("half", "Half")),
        ),
    )
}


def sheet_of(*functions, constants=(), choices=None, greatest_of=None, least_of=None):
    return wire(
        book_of(list(functions)),
        INPUTS,
        {each.name: each for each in constants},
        choices or {},
        greatest_of or {},
        least_of or {},
    )


@formula(level=("face", "opening"))
def board_area(width: Centimetres, height: Centimetres) -> SquareCentimetres:
    """Area of a board.

    Source: geometry.
    """
    return width * height


@formula(level="face")
def film_volume(board_area: SquareCentimetres, depth: Centimetres) -> CubicCentimetres:
    """Volume of a film.

    Source: geometry.
    """
    return board_area * depth


@formula(level="colour")
def need(total_film_volume: CubicCentimetres, extra: Share) -> CubicCentimetres:
    """What a colour needs.

    Source: arithmetic.
    """
    return total_film_volume * (1 + extra)


FACE = {"id": "f1", "name": "Ground", "width": "10", "height": "20", "depth": "0.15"}


def job_of(*faces, **bench):
    return {"name": "Try", "bench": bench, "colours": [{"id": "c1", "name": "Teal", "faces": list(faces)}]}


def colour_of(job, sheet):
    return calculate(job, sheet).rows["colour"][0]


def test_a_face_reaches_the_colour_through_the_names_of_the_parameters():
    colour = colour_of(job_of(FACE, {**FACE, "id": "f2"}), sheet_of(board_area, film_volume, need))
    assert colour.rows["face"][0].cells["film_volume"].value == pytest.approx(30)
    assert colour.cells["need"].value == pytest.approx(66)


def test_a_half_typed_face_blanks_the_colour_and_is_named():
    half = {"id": "f2", "name": "Border", "width": "10"}
    need_cell = colour_of(job_of(FACE, half), sheet_of(board_area, film_volume, need)).cells["need"]
    assert need_cell.value is None
    assert because(need_cell.blank) == "Height is missing, face Border."


def test_a_new_row_that_nobody_touched_does_not_count():
    new = {"id": "f2", "name": "", "shape": "whole", "width": "  "}
    assert colour_of(job_of(FACE, new), sheet_of(board_area, film_volume, need)).cells[
        "need"
    ].value == pytest.approx(33)


def test_a_colour_without_faces_is_blank_and_never_zero():
    cell = colour_of(job_of(), sheet_of(board_area, film_volume, need)).cells["need"]
    assert because(cell.blank) == "Color Teal has no face yet."


def test_what_is_refused_is_said_where_it_is_missed():
    cell = colour_of(job_of({**FACE, "depth": "3/0"}), sheet_of(board_area, film_volume, need)).cells["need"]
    assert because(cell.blank) == "A fraction over 0 has no value. Type it again, such as 3/16."


def test_an_input_left_blank_takes_the_other_that_it_falls_back_on():
    @formula(level="job")
    def reach(stool_height: Centimetres) -> Centimetres:
        """Reach.

        Source: geometry.
        """
        return stool_height * 2

    cells = calculate(job_of(bench_height="90"), sheet_of(reach)).cells
    assert (cells["reach"].value, cells["stool_height"].winner) == (180, "bench_height")


def test_outside_its_range_a_formula_is_blank_with_that_reason():
    @valid_range(says="A film deeper than the board is wide is no film.")
    def film_volume_range(board_area: SquareCentimetres, depth: Centimetres) -> Truth:
        """Range.

        Source: geometry.
        """
        return depth < board_area

    sheet = sheet_of(board_area, film_volume, film_volume_range, need)
    speck = {**FACE, "width": "0.1", "height": "0.1", "depth": "5"}
    cell = colour_of(job_of(speck), sheet).cells["need"]
    assert because(cell.blank) == "A film deeper than the board is wide is no film."


def test_what_has_no_value_is_blank_and_no_exception():
    @formula(level="face")
    def board_area(width: Centimetres, height: Centimetres) -> SquareCentimetres:
        """A root of what may be negative.

        Source: arithmetic.
        """
        return (width - height) ** 0.5 / (width - width)

    face = calculate(job_of(FACE), sheet_of(board_area)).rows["colour"][0].rows["face"][0]
    assert because(face.cells["board_area"].blank) == (
        "Board area cannot be worked out from these figures, face Ground."
    )


def test_the_least_keeps_its_winners_name_and_skips_blanks():
    pick = Pick("face", ("width", "height"))
    sheet = sheet_of(least_of={"narrow_side": pick})
    face = calculate(job_of({**FACE, "height": ""}, FACE), sheet).rows["colour"][0].rows["face"]
    assert (face[0].cells["narrow_side"].value, face[0].cells["narrow_side"].winner) == (10, "width")


def test_a_pick_never_skips_what_was_typed_but_refused():
    sheet = sheet_of(greatest_of={"wide_side": Pick("face", ("width", "height"))})
    face = calculate(job_of({**FACE, "height": "tall"}), sheet).rows["colour"][0].rows["face"][0]
    assert face.cells["wide_side"].blank.kind == "refused"


def test_a_choice_takes_the_cell_it_names_and_the_others_do_not_exist():
    @formula(level="face")
    def whole_area(width: Centimetres, height: Centimetres) -> SquareCentimetres:
        """Whole.

        Source: geometry.
        """
        return width * height

    @formula(level="face")
    def half_area(width: Centimetres, height: Centimetres) -> SquareCentimetres:
        """Half.

        Source: geometry.
        """
        return width * height / 2

    choice = Choice(("face",), "shape", {"whole": "whole_area", "half": "half_area"})
    sheet = sheet_of(whole_area, half_area, choices={"shape_area": choice})
    face = calculate(job_of({**FACE, "shape": "half"}), sheet).rows["colour"][0].rows["face"][0]
    assert (face.cells["shape_area"].value, face.cells["shape_area"].winner) == (100, "half_area")
    assert "whole_area" not in face.cells


def test_a_check_that_cannot_be_made_says_what_is_missing():
    @check(level="face", severity="stop", beside="depth", says="Too deep.")
    def too_deep(depth: Centimetres) -> Truth:
        """Too deep."""
        return depth > 1

    deep, blank = ({**FACE, "depth": depth} for depth in ("2", ""))
    faces = calculate(job_of(deep, blank), sheet_of(too_deep)).rows["colour"][0].rows["face"]
    assert [face.checks[0].state for face in faces] == ["wrong", "unchecked"]
    assert because(faces[1].checks[0].blank) == "Depth is missing, face Ground."


def test_a_circle_names_the_chain():
    @formula(level="face")
    def egg(hen: Centimetres) -> Centimetres:
        """Egg.

        Source: none.
        """
        return hen

    @formula(level="face")
    def hen(egg: Centimetres) -> Centimetres:
        """Hen.

        Source: none.
        """
        return egg

    with pytest.raises(SheetError, match=r"in a circle: (egg < hen < egg|hen < egg < hen)"):
        sheet_of(egg, hen)


def test_a_name_that_nobody_provides_names_the_askers_and_near_misses():
    @formula(level="face")
    def film(dept: Centimetres) -> Centimetres:
        """Film.

        Source: none.
        """
        return dept

    with pytest.raises(SheetError) as refused:
        sheet_of(film)
    assert str(refused.value).startswith(
        "nobody provides dept for the level face; asked for by film; near misses: depth"
    )


def test_a_name_provided_twice_is_refused():
    constant = Constant("width", 1, "cm", "1 cm", "length", "none", "Width")
    choice = Choice(("face",), "shape", {"whole": "width", "half": "height"})
    with pytest.raises(SheetError, match="depth on the level face is provided twice: as input and as choice"):
        sheet_of(constants=[constant], choices={"depth": choice})


def test_an_opening_is_never_given_its_faces_width():
    face = {**FACE, "openings": [{"id": "o1", "height": "2"}]}
    row = calculate(job_of(face), sheet_of(board_area)).rows["colour"][0].rows["face"][0].rows["opening"][0]
    assert because(row.cells["board_area"].blank) == "Width is missing, cut-out 1 of face Ground."
