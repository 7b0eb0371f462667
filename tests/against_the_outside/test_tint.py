"""Tint against the pharmacopoeia's dropper, Harkins and Brown's table, and shares of common practice."""

import numpy
import pytest
from scipy.interpolate import CubicSpline

from webapp.conversions import to_canonical
from webapp.formulas.drops import counted_drop_volume, dropper_drop_volume
from webapp.formulas.rules import falling_share
from webapp.formulas.tint import (
    drop_error,
    first_drops,
    recipe_drops,
    smallest_tint_cup,
    tint_limit_drops,
    tint_limit_volume,
    tint_load,
)

GRAVITY = 980.665  # standard gravity, CGPM 1901

# Harkins, Brown, J. Am. Chem. Soc. 41 (1919) 499: share of a hanging drop that falls, by the tip's radius
# over the cube root of the drop's volume (from memory).
HARKINS_BROWN = {
    0.30: 0.7256,
    0.35: 0.7011,
    0.40: 0.6828,
    0.45: 0.6669,
    0.50: 0.6515,
    0.55: 0.6362,
    0.60: 0.6250,
    0.65: 0.6171,
    0.70: 0.6093,
    0.75: 0.6032,
    0.80: 0.6000,
    0.85: 0.5992,
    0.90: 0.5998,
    0.95: 0.6034,
    1.00: 0.6098,
}


def test_the_fit_is_refitted_from_the_points_of_the_table() -> None:
    widths = numpy.array(list(HARKINS_BROWN))
    corrections = 1 / (2 * numpy.pi * numpy.array(list(HARKINS_BROWN.values())))
    fit = numpy.polyfit(widths, corrections, 3)
    assert fit == pytest.approx([-0.09241, 0.03444, 0.14279, 0.17622], abs=0.000005)
    for width, share in HARKINS_BROWN.items():
        assert falling_share(width) == pytest.approx(share, abs=0.002)


def test_water_from_the_pharmacopoeial_dropper() -> None:
    # USP <1101>: a tip 3 mm across gives 20 drops of water to the mL nominally; a drop weighs 45 to 55 mg.
    drop = dropper_drop_volume(0.3, 72.8, 0.9982, GRAVITY)
    assert 45 <= drop * 0.9982 * 1000 <= 55
    # Computed from the table by spline: 0.0475 mL, 47.45 mg, 21.0 to the mL.
    assert drop == pytest.approx(0.0475, abs=0.00005)
    assert drop * 0.9982 * 1000 == pytest.approx(47.45, abs=0.005)
    assert 1 / drop == pytest.approx(21.0, abs=0.05)


@pytest.mark.parametrize(
    ("surface_tension", "density", "drops"),
    # Computed from the table by spline, for a tip 3 mm across.
    [(25, 1.1, 73.8), (30, 1.3, 72.6)],
)
def test_a_drop_of_tint_is_a_third_of_waters(surface_tension: float, density: float, drops: float) -> None:
    drop = dropper_drop_volume(0.3, surface_tension, density, GRAVITY)
    assert 1 / drop == pytest.approx(drops, abs=0.05)


@pytest.mark.parametrize("tip", [0.2, 0.25, 0.3, 0.4, 0.5])
@pytest.mark.parametrize(("surface_tension", "density"), [(72.8, 0.9982), (40, 1.0), (25, 1.1), (30, 1.8)])
def test_a_drop_is_the_splines_over_all_droppers(tip: float, surface_tension: float, density: float) -> None:
    share = CubicSpline(list(HARKINS_BROWN), list(HARKINS_BROWN.values()))
    hanging = 2 * numpy.pi * tip / 2 * surface_tension / (density * GRAVITY)
    drop = 0.6 * hanging
    for _ in range(60):
        drop = hanging * float(share(tip / 2 / drop ** (1 / 3)))
    assert dropper_drop_volume(tip, surface_tension, density, GRAVITY) == pytest.approx(drop, rel=0.005)


def test_a_teaspoon_in_eight_ounces() -> None:
    # Common practice, no source, as a limit; the share is arithmetic: 1 tsp in 8 fl oz is 2.083%.
    share = to_canonical(1, "tsp", "volume") / to_canonical(8, "fl oz", "volume")
    assert share == pytest.approx(0.02083, abs=0.000005)
    limit = tint_limit_volume(to_canonical(8, "fl oz", "volume"), 0.02083)
    assert limit == pytest.approx(4.93, abs=0.005)
    assert tint_limit_drops(limit, 0.05) == 98


def test_drops_to_start_with() -> None:
    # Arithmetic: 30% of 98 drops is 29, of 2 drops still 1.
    assert first_drops(0.3, 98) == 29
    assert first_drops(0.3, 2) == 1


def test_counted_drops() -> None:
    # Arithmetic: 74 drops to the mL are 0.0135 mL each.
    assert counted_drop_volume(1, 74) == pytest.approx(0.0135, abs=0.00005)


def test_a_recipe_to_the_nearest_drop() -> None:
    # Arithmetic: 0.5% of 100 mL in drops of 0.045 mL is 11.1 drops: 11 drops miss it by 1%.
    assert recipe_drops(0.005, 100, 0.045) == 11
    assert drop_error(11, 0.045, 0.005, 100) == pytest.approx(-0.010, abs=0.0005)
    assert tint_load(11, 0.045, 100) == pytest.approx(0.00495, rel=1e-12)


def test_the_smallest_cup_for_a_recipe() -> None:
    # Arithmetic: half a drop of 0.05 mL is 10% of 0.5% of 50 mL.
    assert smallest_tint_cup(0.05, 0.10, 0.005) == pytest.approx(50, rel=1e-12)
