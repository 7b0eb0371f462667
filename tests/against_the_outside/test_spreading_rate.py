"""Film and coverage against spreading rates that are published or follow exactly from definitions."""

import pytest

from webapp.conversions import from_canonical, to_canonical
from webapp.formulas.cups import full_cup_residue
from webapp.formulas.film import (
    claim_film_share,
    claim_need,
    coats,
    deepest_depth,
    depth_from_volume,
    face_coat_volume,
    face_share,
    face_volume,
    film_volume,
    net_need,
    spread_area,
    spreading_rate,
)


def volume(value: float, unit: str) -> float:
    return to_canonical(value, unit, "volume")


def length(value: float, unit: str) -> float:
    return to_canonical(value, unit, "length")


def area(value: float, unit: str) -> float:
    return to_canonical(value, unit, "area")


def test_a_gallon_at_one_thou_covers_1604_square_feet() -> None:
    # The 1604 of paint teaching texts; exactly 9625/6 = 1604.1667 ft2. Theoretical spreading rate as in
    # ISO 3233-3:2015, which replaced ISO 23811.
    covered = spread_area(volume(1, "gal"), length(1, "thou"))
    assert from_canonical(covered, "ft2", "area") == pytest.approx(1604.1667, abs=0.00005)


def test_a_litre_at_one_micrometre_covers_1000_square_metres() -> None:
    # Definition of the litre.
    covered = spread_area(volume(1, "L"), length(1, "um"))
    assert from_canonical(covered, "m2", "area") == pytest.approx(1000, rel=1e-12)


def test_a_square_foot_at_a_sixteenth_takes_nine_cubic_inches() -> None:
    # Exact: 144 in2 x 1/16 in = 9 in3, which is 4.98701 fl oz and 147.4836 mL.
    film = film_volume(area(1, "ft2"), length(1 / 16, "in"), 0)
    assert film / length(1, "in") ** 3 == pytest.approx(9, rel=1e-12)
    assert from_canonical(film, "fl oz", "volume") == pytest.approx(4.98701, abs=0.000005)
    assert film == pytest.approx(147.4836, abs=0.00005)


def test_a_fluid_ounce_at_a_sixteenth_covers_231_eighths_of_a_square_inch() -> None:
    # Exact, from the gallon of 231 in3: 231/8 in2 = 28.875 in2.
    covered = spread_area(volume(1, "fl oz"), length(1 / 16, "in"))
    assert from_canonical(covered, "in2", "area") == pytest.approx(28.875, rel=1e-12)


def test_spreading_rate_is_the_same_the_other_way_round() -> None:
    # Exact, from the gallon of 231 in3: 28.875 in2 per fl oz at 1/16 in.
    rate = spreading_rate(length(1 / 16, "in"))
    assert from_canonical(rate, "in2/fl oz", "coverage") == pytest.approx(28.875, rel=1e-12)


def test_a_published_example_with_solids_and_transfer() -> None:
    # A published coatings example: 52% solids, 1.5 mil, 30% transfer covers 167 ft2 per gal (166.8).
    covered = 0.52 * 0.30 * spread_area(volume(1, "gal"), length(1.5, "thou"))
    assert from_canonical(covered, "ft2", "area") == pytest.approx(166.8, abs=0.05)


def test_a_claim_of_eleven_square_inches_an_ounce() -> None:
    # The claim: common practice, no source. The share of 38.1% is arithmetic: 11/28.875.
    share = claim_film_share(to_canonical(11, "in2/fl oz", "coverage"), length(1 / 16, "in"))
    assert share == pytest.approx(0.381, abs=0.0005)
    # Arithmetic: by such a claim a film of 38.1 mL takes 100 mL.
    assert claim_need(38.1, share) == pytest.approx(100, abs=0.05)


def test_what_one_vessel_keeps() -> None:
    # Geometry of a cup as tall as wide: a vessel of 100 cm3 with a film of 0.02 cm keeps 1.988 cm3. The
    # thickness of the film is from memory.
    assert full_cup_residue(100, 0.02, 1) == pytest.approx(1.988, abs=0.0005)


def test_depth_is_volume_over_area() -> None:
    # Exact: 9 in3 on 1 ft2 make 1/16 in.
    depth = depth_from_volume(volume(9 / 231, "gal"), area(1, "ft2"))
    assert from_canonical(depth, "in", "length") == pytest.approx(0.0625, rel=1e-12)


def test_grooves_pockets_and_pieces_add_up() -> None:
    # Arithmetic: (100 + 20 + 5) x 4.
    assert face_volume(100, 20, 5, 4) == 500


def test_a_tenth_more_in_two_coats() -> None:
    # Arithmetic: 200 mL in two coats are 100 mL a coat, and 10% more 110 mL; a third coat takes nothing.
    assert net_need(face_coat_volume(200, 2, 1), 0.10) == pytest.approx(110, rel=1e-12)
    assert face_coat_volume(200, 2, 3) == 0


def test_the_faces_of_a_color_share_what_is_poured() -> None:
    # Arithmetic: of 150 mL, 45 mL are three tenths, 30 mL two, 75 mL five; a face that has had its coats, 0.
    assert [face_share(volume, 150) for volume in (45, 30, 75, 0)] == pytest.approx([0.3, 0.2, 0.5, 0])


def test_pocket_texture_and_film_count_together_for_coats() -> None:
    # Arithmetic: 1.5 mm of film, 0.5 mm of texture, 3 mm of pocket are 5 mm: 3 coats of at most 2 mm.
    assert coats(deepest_depth(0.15, 0.05, 0.3), 0.2) == 3


def test_six_millimetres_by_two_are_three_coats() -> None:
    # Arithmetic, on lengths that are no whole numbers in binary.
    assert coats(length(6, "mm"), length(2, "mm")) == 3
    assert coats(length(3 / 16, "in"), length(1 / 16, "in")) == 3
    assert coats(length(6.1, "mm"), length(2, "mm")) == 4
