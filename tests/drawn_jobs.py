"""Jobs that hypothesis draws: cards that a person may read off a can, rooms, benches and faces."""

from typing import Any

from hypothesis import strategies as st

from webapp.job.demo import DEMO_CARDS

MEASURED = st.fixed_dictionaries(
    {
        "ratio_basis": st.sampled_from(["volume", "mass"]),
        "stated_ratio_a": st.sampled_from([1, 2, 3, 4, 5, 10, 100, 1.5, 0.5]),
        "stated_ratio_b": st.sampled_from([1, 1, 1, 43, 0.6]),
        "pot_life": st.floats(300, 15000),
        "pot_life_temperature": st.floats(288, 303),
    },
    optional={
        "density_a": st.floats(0.9, 1.3),
        "density_b": st.floats(0.9, 1.2),
        "pot_life_mass": st.floats(40, 500),
        "mix_time": st.floats(60, 600),
        "tint_limit": st.floats(0.001, 0.05),
        "greatest_coat_depth": st.floats(0.1, 1),
        "greatest_cup_mass": st.floats(50, 2000),
        "stated_coverage": st.floats(2, 12),
        "stated_coverage_depth": st.just(0.16),
        "stated_ratio_tolerance": st.floats(0.01, 0.1),
        "resin_part": st.sampled_from(["a", "b"]),
        "stated_peak_exotherm": st.floats(330, 470),
        "epoxide_equivalent_weight": st.floats(170, 260),
        "hydrogen_equivalent_weight": st.floats(20, 120),
    },
)
CARDS = st.one_of(st.sampled_from(DEMO_CARDS).map(dict), MEASURED)
ROOMS = st.fixed_dictionaries(
    {"air_temperature": st.floats(278, 313)},
    optional={"resin_temperature": st.floats(283, 313), "surface_temperature": st.floats(278, 313)},
)
BENCHES = st.fixed_dictionaries(
    {
        "cup_capacity": st.sampled_from([60, 100, 250, 300, 400, 473, 700, 1000, 2500]),
        "cup_graduation": st.sampled_from([0.5, 1, 2.5, 5, 7.393, 10, 20, 25]),
    },
    optional={
        "cup_diameter": st.floats(5, 14),
        "fill_share": st.floats(0.3, 0.9),
        "contingency": st.floats(0, 0.4),
        "vessels_per_cup": st.integers(1, 3),
        "residual_film": st.floats(0, 0.05),
        "square_foot_time": st.floats(30, 1200),
        "reading_share": st.sampled_from([0.25, 0.5]),
    },
)
DEPTH = {"depth": st.floats(0.03, 0.6)}
FACES = st.one_of(
    st.fixed_dictionaries(
        {"shape": st.just("rectangle"), "width": st.floats(3, 150), "height": st.floats(3, 100), **DEPTH},
        optional={"pieces": st.integers(1, 4), "planned_coats": st.integers(1, 3)},
    ),
    st.fixed_dictionaries(
        {
            "shape": st.just("ring"),
            "outer_diameter": st.floats(20, 120),
            "inner_diameter": st.floats(1, 19),
            **DEPTH,
        }
    ),
    st.fixed_dictionaries(
        {
            "shape": st.just("stroke"),
            "stroke_length": st.floats(20, 500),
            "stroke_width": st.floats(0.5, 5),
            **DEPTH,
        }
    ),
)
COLOURS = st.fixed_dictionaries(
    {"faces": st.lists(FACES, min_size=1, max_size=3)},
    optional={
        "need_basis": st.sampled_from(["greatest", "geometry", "claim"]),
        "tint": st.sampled_from(["drops", "recipe", "clear"]),
        "recipe_load": st.floats(0.0005, 0.08),
    },
)


def job_of(room: Any, card: Any, bench: Any, colours: Any) -> dict[str, Any]:
    """A job of two colours, its rows with ids of their own."""
    rows = [
        {
            **colour,
            "id": f"c{place}",
            "faces": [{**face, "id": f"c{place}f{number}"} for number, face in enumerate(colour["faces"])],
        }
        for place, colour in enumerate(colours)
    ]
    return {"units": {}, "room": room, "card": card, "bench": bench, "colours": rows}


JOBS = st.builds(job_of, ROOMS, CARDS, BENCHES, st.lists(COLOURS, min_size=2, max_size=2))
