"""The bead over a narrow stroke, held against a table of Young-Laplace's equation and SciPy's solution."""

import math

import pytest
from scipy.integrate import quad, solve_ivp
from scipy.optimize import brentq

from tests.against_the_outside.last_digit import agrees
from tests.phone_curves import beads
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


def stroke(width, angle, length=1.0):
    """A stroke's width in cm, the capillary length and the edge angle in radians, from capillary lengths."""
    return width * length, length, math.radians(angle)


def test_the_table_of_heights_and_sections(phone):
    found = beads(phone, *(stroke(width, angle) for width, angle, *_ in CASES))
    for bead_found, (width, _, height, section) in zip(found, CASES, strict=True):
        assert agrees(bead_found.height, height)
        assert agrees(bead_found.section / width**2, section)


@pytest.mark.parametrize(
    ("angle", "section"), [(30, "0.09059"), (60, "0.20473"), (90, "0.39270"), (110, "0.63454")]
)
def test_a_narrow_bead_is_a_circular_segment(angle, section, phone):
    # (p - sin p cos p)/(4 sin² p), geometry of a circular segment.
    assert agrees(bead.narrow_bead_section(1.0, math.radians(angle)), section)
    [narrow] = beads(phone, stroke(1e-3, angle))
    assert narrow.section / 1e-6 == pytest.approx(float(section), abs=5e-6)


@pytest.mark.parametrize("angle", ANGLES)
def test_a_wide_bead_stands_two_a_sine_of_half_the_angle_high(angle, phone):
    # de Gennes, Brochard-Wyart, Quéré, ch. 2 (from memory); checked with SciPy.
    [wide] = beads(phone, stroke(60, angle))
    assert wide.height == pytest.approx(2 * math.sin(math.radians(angle) / 2), rel=1e-7)
    assert bead.wide_bead_section(60.0, 1.0, math.radians(angle)) == pytest.approx(wide.section, rel=1e-7)


def test_a_bead_is_wide_from_8_capillary_lengths_on():
    # Some 14 mm: there the middle of the table's beads stands level to 3%.
    assert bead.wide_bead_section_range(8.0, 1.0)
    assert bead.wide_bead_section_range(14.4, 1.8)
    assert not bead.wide_bead_section_range(7.99, 1.0)
    assert not bead.wide_bead_section_range(14.3, 1.8)


def by_scipy(width, angle):
    """Apex curvature, height and section, in capillary lengths, from the slope along the skin's length."""

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
    return curvature, height, 2 * (height * out - over)


WIDTHS = (0.3, 1.7, 5.0, 9.0)
LEANS = (15, 75, 115, 150)


@pytest.mark.parametrize("width", WIDTHS)
@pytest.mark.parametrize("degrees", LEANS)
def test_the_books_skin_is_the_one_that_scipy_finds(width, degrees):
    across, length, angle = stroke(width, degrees, 0.18)
    curvature, height, section = by_scipy(width, angle)
    edge = bead.bead_edge_stretch(curvature, angle)
    run, _ = quad(bead.bead_run, 0, edge, (curvature, length), epsabs=1e-12, epsrel=1e-10)
    assert 2 * run == pytest.approx(across, rel=1e-6)
    assert bead.bead_slope(edge, curvature) == pytest.approx(angle, rel=1e-9)
    assert bead.bead_drop(curvature, angle, length) == pytest.approx(height * length, rel=1e-6)
    found = bead.bead_section(curvature, height * length, across, length, angle)
    assert found == pytest.approx(section * length**2, rel=1e-6)
    assert curvature <= bead.half_round_curvature(across, length)
    assert across <= bead.level_bead_width(length)


def test_the_phone_stands_scipys_bead_on_a_stroke(phone):
    cases = [(width, angle) for width in WIDTHS for angle in LEANS]
    for found, (width, angle) in zip(
        beads(phone, *(stroke(*each, 0.18) for each in cases)), cases, strict=True
    ):
        _, height, section = by_scipy(width, math.radians(angle))
        assert found.height == pytest.approx(height * 0.18, rel=1e-6)
        assert found.section == pytest.approx(section * 0.18**2, rel=1e-6)


def test_the_profile_runs_from_the_apex_to_the_edge_and_encloses_the_section(phone):
    widths = (0.3, 2.0, 9.0)
    for width, found in zip(widths, beads(phone, *(stroke(each, 100, 0.18) for each in widths)), strict=True):
        out, up = zip(*found.profile, strict=True)
        assert (out[0], up[0]) == (0.0, found.height)
        assert out[-1] == pytest.approx(width * 0.18 / 2, rel=1e-9)
        assert up[-1] == pytest.approx(0.0, abs=1e-12)
        under = sum((b - a) * (u + v) for a, b, u, v in zip(out, out[1:], up, up[1:], strict=False))
        assert under == pytest.approx(found.section, rel=0.01)


@pytest.mark.parametrize("angle", [1, 30, 90, 115, 175])
def test_beads_over_hair_lines_and_whole_boards_keep_to_their_two_limits(angle, phone):
    hair, board = beads(phone, stroke(0.001, angle, 0.18), stroke(1000, angle, 0.18))
    narrow = bead.narrow_bead_section(0.001 * 0.18, math.radians(angle))
    assert hair.section == pytest.approx(narrow, rel=2e-3)
    assert board.section == pytest.approx(bead.wide_bead_section(180.0, 0.18, math.radians(angle)), rel=1e-6)
