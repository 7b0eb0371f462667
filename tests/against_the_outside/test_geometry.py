"""Areas and edges against geometry, against shapely's polygons, and against SciPy's elliptic integral."""

import math

import pytest
from scipy.special import ellipe
from shapely.geometry import LineString, Point, Polygon, box

from webapp.formulas import areas, edges, openings

FINE = 4096
WIDTHS = (23.65, 31.03, 25.03)


def ring_of(
    points: int, radius: float, start: float = 0.0, turn: float = 2 * math.pi
) -> list[tuple[float, float]]:
    """Return points on an arc about the origin."""
    steps = [start + turn * each / points for each in range(points + 1)]
    return [(radius * math.cos(each), radius * math.sin(each)) for each in steps]


def test_an_arched_top() -> None:
    # Geometry: 36 x 20 in with a rise of 6 in: radius 30, area 867.151 in2, edge 114.610 in.
    assert areas.arch_top_area(36, 20, 6) == pytest.approx(867.151, abs=0.0005)
    assert edges.arch_top_edge(36, 20, 6) == pytest.approx(114.610, abs=0.0005)


def test_an_arched_top_is_shapelys() -> None:
    # shapely: a box joined with the disc of radius 30 that rises 6 over its ends.
    disc = Polygon([(x + 18, y + 20 + 6 - 30) for x, y in ring_of(FINE * 8, 30)])
    shape = box(0, 0, 36, 20).union(disc.intersection(box(0, 20, 36, 40)))
    assert areas.arch_top_area(36, 20, 6) == pytest.approx(shape.area, rel=1e-6)
    assert edges.arch_top_edge(36, 20, 6) == pytest.approx(shape.length, rel=1e-6)


def test_an_arch_that_rises_by_half_of_its_width_is_a_half_circle() -> None:
    # Geometry: 30 wide, no sides, rise 15: 353.429 and 30 + 47.124.
    assert areas.arch_top_area(30, 0, 15) == pytest.approx(353.429, abs=0.0005)
    assert edges.arch_top_edge(30, 0, 15) == pytest.approx(77.124, abs=0.0005)
    assert areas.half_round_area(30) == pytest.approx(353.429, abs=0.0005)
    assert edges.half_round_edge(30) == pytest.approx(77.124, abs=0.0005)


@pytest.mark.parametrize("width", WIDTHS)
def test_a_full_half_circle_is_not_lost_to_rounding(width: float) -> None:
    # Geometry: pi w2/8 and w + pi w/2; in binary the arc's sine comes out a hair over one at these widths.
    assert areas.arch_top_area(width, 0, width / 2) == pytest.approx(math.pi * width**2 / 8, rel=1e-7)
    assert edges.arch_top_edge(width, 0, width / 2) == pytest.approx(width + math.pi * width / 2, rel=1e-7)


def test_the_edge_of_an_ellipse() -> None:
    # SciPy's complete elliptic integral: 30 x 18 has an edge of 76.58100; Ramanujan gives 76.580997.
    assert edges.ellipse_edge(30, 18) == pytest.approx(76.58100, abs=0.000005)
    assert edges.ellipse_edge(30, 18) == pytest.approx(76.580997, abs=0.0000005)


@pytest.mark.parametrize(
    ("width", "height", "within"), [(10, 10, 1e-12), (30, 18, 1e-7), (10, 2, 1e-5), (20, 1, 1e-4)]
)
def test_the_edge_of_an_ellipse_is_scipys(width: float, height: float, within: float) -> None:
    exact = 2 * width * ellipe(1 - (height / width) ** 2)
    assert edges.ellipse_edge(width, height) == pytest.approx(exact, rel=within)
    assert edges.ellipse_edge(height, width) == edges.ellipse_edge(width, height)


@pytest.mark.parametrize(
    ("sides", "area", "edge"),
    [
        # Geometry: regular polygons in a circle 10 across; 3 sides: 3 sqrt(3)/16 x 100 and 15 sqrt(3).
        (3, 32.4760, 25.9808),
        (4, 50.0000, 28.2843),
        (6, 64.9519, 30.0000),
        (8, 70.7107, 30.6147),
    ],
)
def test_regular_polygons(sides: int, area: float, edge: float) -> None:
    assert areas.polygon_area(sides, 10) == pytest.approx(area, abs=0.00005)
    assert edges.polygon_edge(sides, 10) == pytest.approx(edge, abs=0.00005)


# shapely draws the same shapes as polygons of very many corners.
SHAPELY = {
    "rectangle": (box(0, 0, 12.375, 24), (12.375, 24)),
    "rounded_rectangle": (
        box(2, 2, 28, 16).buffer(2, quad_segs=FINE),
        (30, 18, 2),
    ),
    "circle": (Point(0, 0).buffer(7, quad_segs=FINE), (14,)),
    "ring": (
        Point(0, 0).buffer(9, quad_segs=FINE).difference(Point(0, 0).buffer(5, quad_segs=FINE)),
        (18, 10),
    ),
    "triangle": (Polygon([(0, 0), (14, 0), (7, 24)]), (14, 24)),
    "polygon": (Polygon(ring_of(7, 5)), (7, 10)),
    "capsule": (LineString([(0, 0), (20, 0)]).buffer(4, quad_segs=FINE), (28, 8)),
    "half_round": (Polygon(ring_of(FINE, 6, 0, math.pi)), (12,)),
    "trapezoid": (Polygon([(0, 0), (26, 0), (23, 4), (3, 4)]), (20, 26, 4)),
    "stroke": (LineString([(0, 0), (40, 0)]).buffer(1.5, cap_style="flat"), (40, 3)),
}


@pytest.mark.parametrize("shape", SHAPELY)
def test_a_shape_is_shapelys(shape: str) -> None:
    drawn, sizes = SHAPELY[shape]
    assert getattr(areas, f"{shape}_area")(*sizes) == pytest.approx(drawn.area, rel=1e-6)
    assert getattr(edges, f"{shape}_edge")(*sizes) == pytest.approx(drawn.length, rel=1e-6)


def test_the_area_of_an_ellipse_is_shapelys() -> None:
    drawn = Polygon([(15 * x, 9 * y) for x, y in ring_of(FINE, 1)])
    assert areas.ellipse_area(30, 18) == pytest.approx(drawn.area, rel=1e-6)


def test_a_face_less_its_openings_is_shapelys() -> None:
    drawn = box(0, 0, 40, 30).difference(Point(10, 10).buffer(3, quad_segs=FINE))
    drawn = drawn.difference(Point(30, 20).buffer(3, quad_segs=FINE))
    holes = openings.opening_area(areas.circle_area(6), 2)
    assert openings.face_area(areas.rectangle_area(40, 30), holes) == pytest.approx(drawn.area, rel=1e-6)
    rims = openings.opening_edge(edges.circle_edge(6), 2)
    assert openings.edge_length(edges.rectangle_edge(40, 30), rims, 1) == pytest.approx(
        drawn.length, rel=1e-6
    )


def test_known_sizes_are_taken_at_their_word() -> None:
    # Definition.
    assert areas.known_area(1200) == 1200
    assert edges.known_edge(140) == 140
    assert openings.poured_area(1152, 3) == 3456
