"""A curve of the cup's heat or of the film is drawn within a frame: it asks the formulas only so often.

The count is the same on every machine. A slow phone calls a formula some thousand times in a millisecond.
"""

import pytest

from tests.against_the_outside.cups_by_scipy import cup

COUNTED = """async ([address, name, cases]) => {
  const { formulas } = await import(new URL("printed.js", window.modules));
  const module = await import(new URL(address, window.modules));
  const sound = { ...formulas };
  let calls = 0;
  for (const [each, formula] of Object.entries(sound)) {
    formulas[each] = (...figures) => { calls += 1; return formula(...figures); };
  }
  try {
    return cases.map((figures) => {
      calls = 0;
      module[name](figures);
      return calls;
    });
  } finally {
    Object.assign(formulas, sound);
  }
}"""

CUPS = [
    cup(rate, mass, resin, air)
    for rate in (2e-5, 2.4e-4, 3e-3)
    for mass in (1, 50, 150, 5000)
    for resin, air in ((5, 5), (25, 25), (45, 45))
]
FILM = {
    "capillary_length": 0.1755,
    "wetting_angle": 0.436,
    "edge_angle": 2.007,
    "edge_hold_depth": 0.2959,
    "coat_depth": 0.159,
    "edge": "sharp",
}
FACES = [{**FILM, "coat_depth": depth, "stroke_width": None} for depth in (0.08, 0.15, 0.29)]
STROKES = [{**FILM, "coat_depth": 0.08, "stroke_width": width} for width in (0.2, 0.6, 2.5)]


@pytest.mark.parametrize(
    ("module", "name", "cases", "most"),
    [
        ("sheet/heat-curve.js", "heatCurve", CUPS, 3000),
        ("steps/film-section.js", "filmSection", FACES, 1300),
        ("steps/film-section.js", "filmSection", STROKES, 13_000),
    ],
    ids=["a cup's heat", "a wide film", "a narrow stroke"],
)
def test_a_curve_asks_the_formulas_no_more_often_than(phone, module, name, cases, most):
    counts = phone.evaluate(COUNTED, [module, name, cases])
    assert 0 < max(counts) <= most
