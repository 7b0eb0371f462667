"""Pictures on the phone: drawn from the sizes that there are, and never from a size that is missing."""

import inspect
from itertools import product

import pytest

from webapp.sheet.choices import CHOICES
from webapp.sheet.wiring import load_sheet

SIZES = {
    shape: list(inspect.signature(load_sheet().book.formulas[cell].function).parameters)
    for shape, cell in CHOICES["shape_area"].cells.items()
}
BROKEN = ("NaN", "undefined", "Infinity")

DRAWN = """async ([shape, sizes]) => {
  const { drawFace, drawThumb } = await import(new URL("pictures/face.js", window.modules));
  const whole = Object.fromEntries(Object.entries(sizes).map(([name, size]) => [name, size ?? Number.NaN]));
  const openings = [{ shape, sizes: whole }];
  const face = { shape, sizes: whole, across: "1 in", up: "1 in", tick: 1, openings, title: "" };
  const around = { ...face, shape: "rectangle", sizes: { width: 50, height: 40 } };
  const drawn = [drawFace(face), drawThumb({ shape, sizes: whole, largest: 50 }), drawFace(around)];
  return drawn.map((node) => node?.outerHTML ?? "");
}"""


@pytest.mark.parametrize("shape", SIZES)
def test_a_face_is_drawn_from_whole_sizes_or_not_at_all(phone, shape):
    for known in product([True, False], repeat=len(SIZES[shape])):
        sizes = {name: 5 if is_known else None for name, is_known in zip(SIZES[shape], known, strict=True)}
        for drawn in phone.evaluate(DRAWN, [shape, sizes]):
            assert not [word for word in BROKEN if word in drawn], (sizes, drawn)


@pytest.mark.parametrize(("start", "limit"), [(0, 0), (0, 1), (1, 1), (0, 0.4), (12, 36), (90, 388)])
def test_a_tint_ladder_is_drawn_to_any_limit(phone, start, limit):
    drawn = phone.evaluate(
        """async (ladder) => {
          const { drawLadder } = await import(new URL("pictures/ladder.js", window.modules));
          return drawLadder({ ...ladder, title: "" }).outerHTML;
        }""",
        {"start": start, "limit": limit},
    )
    assert not [word for word in BROKEN if word in drawn], drawn


@pytest.mark.parametrize(
    ("capacity", "graduation", "units", "numbers"),
    [
        # By the cup's own marks: 600 mL every 20 mL, and 16 fl oz every 1/4 (29.5735295625 mL a fl oz).
        (600, 20, "fl oz", {"100", "200", "400", "500"}),
        (473.176473, 7.393382390625, "mL", {"2", "4", "6", "14"}),
    ],
)
def test_a_cup_is_drawn_with_the_numbers_that_stand_on_it(phone, capacity, graduation, units, numbers):
    drawn = phone.evaluate(
        """async ([capacity, graduation, volume]) => {
          const { filledCup } = await import(new URL("sheet/filled-cup.js", window.modules));
          const { drawCup } = await import(new URL("pictures/cup.js", window.modules));
          const drawing = drawCup(filledCup({ capacity, graduation, a: null, total: null }, { volume }));
          return [...drawing.querySelectorAll(".cup__number")].map((number) => number.textContent);
        }""",
        [capacity, graduation, units],
    )
    assert numbers <= set(drawn), drawn
