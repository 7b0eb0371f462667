"""The bead over a narrow stroke, held against a table of Young-Laplace's equation and SciPy's solution."""

import math

import pytest
from scipy.integrate import solve_ivp
from scipy.optimize import brentq

from tests.against_the_outside.last_digit import agrees
from webapp.bead_profile import BEAD_ASKS, bead_profile
from webapp.formulas import bead

# 2-D Young-Laplace, solved with SciPy: width/a, then (height/a, section/width²) at 30, 60, 90, 110 degrees.
TABLE = {
    0.5: [("0.0666", "0.09015"), ("0.1431", "0.20315"), ("0.2457", "0.38568"), ("0.3449", "0.60919")],
    1: [("0.1309", "0.08888"), ("0.2792", "0.19866"), ("0.4688", "0.36741"), ("0.6345", "0.55290")],
    2: [("0.2454", "0.08430"), ("0.5113", "0.18375"), ("0.8130", "0.31827"), ("1.0309", "0.43877")],
    4: [("0.3991", "0.07131"), ("0.7972", "0.14820"), ("1.1794", "0.23440"), ("1.4090", "0.29678")],
    8: [("0.4999", "0.04912"), ("0.9704", "0.09799"), ("1.3808", "0.14558"), ("1.6061", "0.17546")],
    16: [("0.5173", "0.02845"), ("0.9995", "0.05573"), ("1.4136", "0.08058"), ("1.6377", "0.09505")],
}
ANGLES = (30, 60, 90, 110)
CASES = [
    (width, angle, *row) for width, rows in TABLE.items() for angle, row in zip(ANGLES, rows, strict=True)
]

IN_JAVASCRIPT = """async (cases) => {
  const { beadProfile } = await import(new URL("sheet/bead-profile.js", window.modules));
  return cases.map((each) => beadProfile(each));
}"""


def standing(width, angle, length=1.0):
    figures = (width * length, length, math.radians(angle))
    return dict(zip(BEAD_ASKS, figures, strict=True))


@pytest.mark.parametrize(("width", "angle", "height", "section"), CASES)
def test_the_table_of_heights_and_sections(width, angle, height, section):
    found = bead_profile(standing(width, angle))
    assert agrees(found.height, height)
    assert agrees(found.section / width**2, section)


@pytest.mark.parametrize(
    ("angle", "section"), [(30, "0.09059"), (60, "0.20473"), (90, "0.39270"), (110, "0.63454")]
)
def test_a_narrow_bead_is_a_circular_segment(angle, section):
    # (p - sin p cos p)/(4 sin² p), geometry of a circular segment.
    assert agrees(bead.narrow_bead_section(1.0, math.radians(angle)), section)
    assert bead_profile(standing(1e-3, angle)).section / 1e-6 == pytest.approx(float(section), abs=5e-6)


@pytest.mark.parametrize("angle", ANGLES)
def test_a_wide_bead_stands_two_a_sine_of_half_the_angle_high(angle):
    # de Gennes, Brochard-Wyart, Quéré, ch. 2 (from memory); checked with SciPy.
    wide = bead_profile(standing(60, angle))
    assert wide.height == pytest.approx(2 * math.sin(math.radians(angle) / 2), rel=1e-7)
    assert bead.wide_bead_section(60.0, 1.0, math.radians(angle)) == pytest.approx(wide.section, rel=1e-7)


def test_a_bead_is_wide_from_8_capillary_lengths_on():
    # Some 14 mm: there the middle of the table's beads stands level to 3 %.
    assert bead.wide_bead_section_range(8.0, 1.0)
    assert bead.wide_bead_section_range(14.4, 1.8)
    assert not bead.wide_bead_section_range(7.99, 1.0)
    assert not bead.wide_bead_section_range(14.3, 1.8)


def by_scipy(width, angle):
    """Height and section over a stroke, in capillary lengths, from the slope along the skin's length."""

    def skin(curvature):
        def along(_, state):
            _, down, slope, _ = state
            return math.cos(slope), math.sin(slope), curvature + down, down * math.cos(slope)

        def at_edge(_, state):
            return state[2] - angle

        at_edge.terminal = True
        found = solve_ivp(along, (0, 100), (0, 0, 0, 0), events=at_edge, rtol=1e-10, atol=1e-12)
        return found.y[:, -1]

    curvature = brentq(lambda each: 2 * skin(each)[0] - width, 1e-9, 10 / width, rtol=1e-12)
    out, height, _, over = skin(curvature)
    return height, 2 * (height * out - over)


@pytest.mark.parametrize("width", [0.3, 1.7, 5.0, 9.0])
@pytest.mark.parametrize("angle", [15, 75, 115, 150])
def test_scipy_solves_the_same_bead(width, angle):
    found = bead_profile(standing(width, angle, length=0.18))
    height, section = by_scipy(width, math.radians(angle))
    assert found.height == pytest.approx(height * 0.18, rel=1e-6)
    assert found.section == pytest.approx(section * 0.18**2, rel=1e-6)


@pytest.mark.parametrize("width", [0.3, 2.0, 9.0])
def test_the_profile_runs_from_the_apex_to_the_edge_and_encloses_the_section(width):
    found = bead_profile(standing(width, 100, length=0.18))
    out = [point[0] for point in found.profile]
    up = [point[1] for point in found.profile]
    assert (out[0], up[0]) == (0.0, found.height)
    assert out[-1] == pytest.approx(width * 0.18 / 2, rel=1e-9)
    assert up[-1] == pytest.approx(0.0, abs=1e-12)
    under = sum((b - a) * (u + v) for a, b, u, v in zip(out, out[1:], up, up[1:], strict=False))
    assert under == pytest.approx(found.section, rel=0.01)


def test_the_phone_stands_the_same_bead_on_a_stroke(phone):
    cases = [
        standing(width, angle, 0.18)
        for width in (0.01, 0.5, 2, 8, 30, 1000)
        for angle in (1, 30, 90, 115, 175)
    ]
    for values, theirs in zip(cases, phone.evaluate(IN_JAVASCRIPT, cases), strict=True):
        ours = bead_profile(values)
        assert theirs["height"] == pytest.approx(ours.height, rel=1e-9)
        assert theirs["section"] == pytest.approx(ours.section, rel=1e-9)
        assert theirs["profile"][-1][0] == pytest.approx(ours.profile[-1][0], rel=1e-9)
