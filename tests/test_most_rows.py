"""A job has room for so many rows, and the phone says where it ends before one is added."""

import copy

import pytest

from webapp.job.demo import EXAMPLE_JOB

WHY_FULL = """async ([job, level, place, copied]) => {
  const { whyFull, whyRecordFull } = await import(`${modules}keeping/most-rows.js`);
  const parent = place.reduce((row, step) => row[step], job);
  return [whyFull(job, level, parent, copied), whyRecordFull(job)];
}"""


def colours(count, faces=1, openings=0, cups=0):
    """A job with so many colors, each with so many faces and cups, and each face with so many cut-outs."""
    face = {"openings": [{} for _ in range(openings)]}
    colour = {"faces": [copy.deepcopy(face) for _ in range(faces)], "cups": [{} for _ in range(cups)]}
    return {**EXAMPLE_JOB, "colours": [copy.deepcopy(colour) for _ in range(count)]}


COLOUR, FACE = ["colours", 0], ["colours", 0, "faces", 0]


@pytest.mark.parametrize(
    ("job", "level", "parent", "copied", "says"),
    [
        (colours(39), "colour", [], None, ""),
        (colours(40), "colour", [], None, "A job holds at most 40 colors. Begin another job."),
        (colours(1, 199), "face", COLOUR, None, ""),
        (colours(1, 200), "face", COLOUR, None, "A color holds at most 200 faces. Begin another color."),
        (colours(9, 111), "face", COLOUR, None, ""),
        (colours(10, 100), "face", COLOUR, None, "A job holds at most 1,000 faces. Begin another job."),
        (
            colours(10, 100),
            "colour",
            [],
            {"faces": [{}]},
            "A job holds at most 1,000 faces. Begin another job.",
        ),
        (colours(8, 111), "colour", [], colours(1, 112)["colours"][0], ""),
        (
            colours(8, 111),
            "colour",
            [],
            colours(1, 113)["colours"][0],
            "A job holds at most 1,000 faces. Begin another job.",
        ),
        (colours(1, 1, 39), "opening", FACE, None, ""),
        (
            colours(1, 1, 40),
            "opening",
            FACE,
            None,
            "A face holds at most 40 cut-outs. Measure its area and choose the shape that is known.",
        ),
        (
            colours(1, 50, 40),
            "face",
            COLOUR,
            {"openings": [{}]},
            "A job holds at most 2,000 cut-outs. Begin another job.",
        ),
    ],
)
def test_a_row_finds_room_or_hears_why_there_is_none(phone, job, level, parent, copied, says):
    assert phone.evaluate(WHY_FULL, [job, level, parent, copied]) == [says, ""]


def test_the_record_of_a_job_ends_at_1000_cups(phone):
    full = "The record of a job holds at most 1,000 cups. Begin another job."
    assert phone.evaluate(WHY_FULL, [colours(2, cups=499), "colour", [], None]) == ["", ""]
    assert phone.evaluate(WHY_FULL, [colours(2, cups=500), "colour", [], None]) == ["", full]
