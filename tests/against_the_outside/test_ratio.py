"""Ratio and readings against worked examples and against what a cup's marks allow."""

import pytest

from webapp.formulas.ratio import (
    hardener_phr,
    mass_ratio_as_stated,
    mass_ratio_from_volume,
    mixed_density,
    part_a_mass,
    part_a_share,
    part_a_volume,
    part_b_mass,
    part_b_volume,
    volume_ratio_as_stated,
    volume_ratio_from_mass,
)
from webapp.formulas.readings import (
    mix_volume,
    ratio_deviation,
    reading_a_mass,
    reading_b_mass,
)

# A coatings textbook's worked example: diethylenetriamine of molar mass 103 with five active hydrogens has
# an AHEW of 20.6. The rule phr = AHEW x 100 / EEW: Lee, Neville, Handbook of Epoxy Resins (1967), from
# memory.
PHR = [
    (103 / 5, 200, 10.3, 0.05),
    (20.6, 190, 10.84, 0.005),
    (24.4, 190, 12.84, 0.005),
]


@pytest.mark.parametrize(("hydrogen", "epoxide", "expected", "tolerance"), PHR)
def test_hardener_for_a_hundred_parts_of_resin(
    hydrogen: float, epoxide: float, expected: float, tolerance: float
) -> None:
    assert hardener_phr(hydrogen, epoxide) == pytest.approx(expected, abs=tolerance)


def test_two_to_one_by_volume_is_not_two_to_one_by_mass() -> None:
    # Arithmetic: (2 x 1.15)/(1 x 0.95) = 2.421, that is 100 : 41.3.
    assert mass_ratio_from_volume(2, 1, 1.15, 0.95) == pytest.approx(2.421, abs=0.0005)
    assert 100 / mass_ratio_from_volume(2, 1, 1.15, 0.95) == pytest.approx(41.3, abs=0.05)


def test_by_mass_and_back_again() -> None:
    # Arithmetic: 100 : 41.304 by mass with the same densities is 2 : 1 by volume.
    assert volume_ratio_from_mass(100, 41.304, 1.15, 0.95) == pytest.approx(2.000, abs=0.0005)
    assert volume_ratio_as_stated(3, 2) == 1.5
    assert mass_ratio_as_stated(100, 40) == 2.5


@pytest.mark.parametrize(
    ("volume_ratio", "share"),
    # Arithmetic.
    [(1, 0.5), (2, 2 / 3), (0.25, 0.2)],
)
def test_the_ratio_said_in_shares(volume_ratio: float, share: float) -> None:
    assert part_a_share(volume_ratio) == pytest.approx(share, rel=1e-12)


def test_the_parts_of_a_cup() -> None:
    # Arithmetic: 300 mL at 2 : 1 is 200 and 100 mL; 230 g and 95 g at 1.15 and 0.95 g/mL; 325 g in 300 mL.
    share = part_a_share(2)
    assert part_a_volume(300, share) == pytest.approx(200, rel=1e-12)
    assert part_b_volume(300, share) == pytest.approx(100, rel=1e-12)
    assert part_a_mass(200, 1.15) == pytest.approx(230, rel=1e-12)
    assert part_b_mass(100, 0.95) == pytest.approx(95, rel=1e-12)
    assert mixed_density(share, 1.15, 0.95) == pytest.approx(325 / 300, rel=1e-12)


def test_a_deviation_has_a_sign() -> None:
    # Arithmetic: 31.25 : 28.75 is 8.7% too much of A, 28.75 : 31.25 is 8.0% too little.
    assert ratio_deviation(31.25, 28.75, 1) == pytest.approx(0.087, abs=0.0005)
    assert ratio_deviation(28.75, 31.25, 1) == pytest.approx(-0.080, abs=0.0005)
    assert ratio_deviation(40, 20, 2) == 0


def test_readings_on_a_scale_and_in_all() -> None:
    # Arithmetic: 90 mL of 1.15 g/mL is 103.5 g, up to 104 g; at 1.15 to 0.97 by mass 87.7 g of B, so 88 g.
    assert reading_a_mass(90, 1.15, 1) == 104
    assert reading_a_mass(90, 1.15, 0.1) == pytest.approx(103.5, rel=1e-12)
    assert reading_b_mass(104, 1.15 / 0.97, 1) == 88
    assert mix_volume(180, 2) == 360
