"""Will the edge hold? Held against de Gennes' book, Gibbs' criterion and SciPy's search for a maximum."""

import math

import pytest
from scipy.optimize import minimize_scalar

from tests.against_the_outside.last_digit import agrees
from webapp.formulas import edge_hold

GRAVITY = 980.665

# de Gennes, Brochard-Wyart, Quéré, Capillarity and Wetting Phenomena, ch. 2 (from memory): water 2.7 mm.
WATER = edge_hold.capillary_length(72.8, 0.998, GRAVITY)


def test_the_capillary_length_of_water():
    assert agrees(WATER * 10, "2.7")
    assert agrees(WATER * 10, "2.727")


def test_a_puddle_of_water_at_a_right_angle():
    # The same chapter, 2 a sin(angle/2); computed with 72.8 mN/m and 0.998 g/mL.
    assert agrees(edge_hold.sharp_edge_hold_depth(WATER, math.pi / 2) * 10, "3.857")


@pytest.mark.parametrize(
    ("tension", "density", "wetting", "millimetres"),
    [(40, 1.12, 30, "3.31"), (40, 1.12, 20, "3.13"), (35, 1.12, 20, "2.92"), (45, 1.12, 45, "3.74")],
)
def test_a_square_edge_holds_between_a_sixteenth_and_an_eighth(tension, density, wetting, millimetres):
    # Gibbs' criterion (Oliver, Huh, Mason, J. Colloid Interface Sci. 59 (1977) 568, from memory): computed.
    length = edge_hold.capillary_length(tension, density, GRAVITY)
    angle = edge_hold.edge_angle(math.radians(wetting), math.radians(90))
    held = edge_hold.sharp_edge_hold_depth(length, angle)
    assert agrees(held * 10, millimetres)
    # Common practice, no source: a 1/16 in film has room to spare and a 1/8 in film has none.
    safe = edge_hold.safe_edge_depth(held, 0.8)
    assert not edge_hold.edge_may_spill(0.15875, safe)
    assert edge_hold.edge_may_spill(0.3175, safe)


def test_no_edge_angle_is_steeper_than_a_half_turn():
    assert edge_hold.edge_angle(math.radians(80), math.radians(30)) == math.pi


def test_a_chamfer_is_a_corner_of_135_degrees():
    # Gibbs' criterion: edge angle = wetting angle + 180 - 135 degrees.
    for wetting in (10, 25, 60):
        corner = edge_hold.edge_angle(math.radians(wetting), math.radians(135))
        held = edge_hold.sharp_edge_hold_depth(0.18, corner)
        assert edge_hold.chamfered_edge_hold_depth(0.18, math.radians(wetting)) == pytest.approx(held, 1e-12)


@pytest.mark.parametrize(
    ("radius", "millimetres"),
    [(0, "3.120"), (0.5, "2.620"), (1.0, "2.126"), (1.5875, "1.757"), (3.175, "1.376")],
)
def test_easing_an_edge_costs_depth(radius, millimetres):
    # Computed from Gibbs' criterion on a quarter round, 35 mN/m, 1.10 g/mL, 30 degrees.
    length = edge_hold.capillary_length(35, 1.10, GRAVITY)
    assert agrees(edge_hold.rounded_edge_hold_depth(length, math.radians(30), radius / 10) * 10, millimetres)


@pytest.mark.parametrize("wetting", [0, 5, 25, 60, 90])
@pytest.mark.parametrize("radius", [0, 0.001, 0.05, 0.15875, 0.5, 5.0])
@pytest.mark.parametrize("length", [0.1, 0.18, 0.27])
def test_the_rounded_edge_is_where_scipy_finds_the_maximum(wetting, radius, length):
    angle = math.radians(wetting)

    def depth(lean):
        return 2 * length * math.sin((angle + lean) / 2) - radius * (1 - math.cos(lean))

    best = minimize_scalar(
        lambda lean: -depth(lean), bounds=(0, math.pi / 2), method="bounded", options={"xatol": 1e-10}
    )
    greatest = max(-best.fun, depth(0.0), depth(math.pi / 2))
    assert edge_hold.rounded_edge_hold_depth(length, angle, radius) == pytest.approx(greatest, rel=1e-9)


def test_a_taped_edge_holds_its_own_height_and_what_its_top_holds():
    # Gibbs' criterion on the top of the tape; geometry.
    top = edge_hold.sharp_edge_hold_depth(0.18, math.radians(115))
    assert edge_hold.raised_edge_hold_depth(0.1, 0.18, math.radians(115)) == pytest.approx(0.1 + top, 1e-12)
