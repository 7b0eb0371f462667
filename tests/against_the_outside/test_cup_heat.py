"""The cup's heat, held against SciPy's own solution of the book's rates, in Python and on the phone."""

from functools import cache

import pytest
from scipy.integrate import solve_ivp
from scipy.optimize import minimize_scalar

from tests.against_the_outside.last_digit import agrees
from webapp import heat_curve
from webapp.formulas import cup_heat, working_time
from webapp.formulas.constants import CONSTANTS

CONSTANT = {each.name: each.canonical for each in CONSTANTS}
HELD = {
    **CONSTANT,
    "heat_capacity": 1.9e7,
    "heat_capacity_slope": 0.0,
    "air_loss": 10000.0,
    "air_loss_slope": 0.0,
}
KINETICS = ("self_start", "activation_energy", "gas_constant", "kinetic_reference_temperature")
ICE_POINT = 273.15
NEAR = 0.005

IN_JAVASCRIPT = """async (cases) => {
  const { heatCurve, rateConstant } = await import(new URL("heat-curve.js", window.modules));
  return cases.map((each) => {
    const curve = heatCurve(each);
    return [curve.gel.time, curve.peak.state[1], curve.peak.time, each.pot_life ? rateConstant(each) : 0];
  });
}"""

TIMED = """async ([card, cup]) => {
  const { heatCurve, rateConstant } = await import(new URL("heat-curve.js", window.modules));
  const taken = (run) => {
    const start = performance.now();
    for (let time = 0; time < 20; time += 1) run();
    return (performance.now() - start) / 20;
  };
  const best = (run) => Math.min(...Array.from({ length: 8 }, () => taken(run)));
  return [best(() => heatCurve(cup)), best(() => rateConstant(card))];
}"""


def cup(rate_constant, mass, resin, air, constants=CONSTANT):
    """The values of a cup 7.5 cm across, of a mass in g, with resin and air in degC."""
    return {
        **constants,
        "rate_constant": rate_constant,
        "cup_mass": mass,
        "cup_surface": cup_heat.cup_surface(mass, 7.5, 1.10),
        "resin_temperature": resin + ICE_POINT,
        "air_temperature": air + ICE_POINT,
    }


def card(pot_life, temperature, mass, constants=CONSTANT):
    """The values of a card: pot life in s, its temperature in degC, its mass in g."""
    kelvins = temperature + ICE_POINT
    kinetics = [constants[name] for name in ("gel_conversion", *KINETICS)]
    return {
        **constants,
        "pot_life": pot_life,
        "pot_life_temperature": kelvins,
        "pot_life_mass": mass,
        "card_cup_surface": cup_heat.card_cup_surface(mass, 7.5, 1.10),
        "cool_rate_constant": cup_heat.cool_rate_constant(pot_life, kelvins, *kinetics),
    }


@cache
def _by_scipy(key):
    values = dict(key)
    rates = heat_curve.rates_of(values)

    def gelled(_, state):
        return state[0] - values["gel_conversion"]

    def cured(_, state):
        return state[0] - 0.9999

    gelled.direction = cured.direction = 1
    cured.terminal = True
    found = solve_ivp(
        lambda _, state: rates((float(state[0]), float(state[1]))),
        (0, 1e9),
        (0.0, values["resin_temperature"]),
        method="Radau",
        rtol=1e-8,
        atol=1e-10,
        events=[gelled, cured],
        dense_output=True,
    )
    hottest = int(found.y[1].argmax())
    between = (found.t[max(hottest - 1, 0)], found.t[min(hottest + 1, len(found.t) - 1)])
    peak = minimize_scalar(lambda time: -found.sol(time)[1], bounds=between, method="bounded")
    return float(found.t_events[0][0]), max(-float(peak.fun), float(found.y[1].max()))


def by_scipy(values):
    """Gel time in s and peak in K, by an implicit method with tight tolerances."""
    return _by_scipy(tuple(sorted(values.items())))


def test_the_adiabatic_rise():
    # 400 J/g on 1.9 J/(g K), conservation of energy.
    assert agrees(cup_heat.adiabatic_rise(400e7, 1.9e7), "210.53")


@pytest.mark.parametrize(("mass", "surface"), [(100, "136.842"), (150, "161.085")])
def test_the_surface_of_a_cup(mass, surface):
    # Geometry: 7.5 cm across, density 1.10 g/cm3, top, side and bottom, in cm2.
    assert agrees(cup_heat.cup_surface(mass, 7.5, 1.10), surface)
    assert agrees(cup_heat.card_cup_surface(mass, 7.5, 1.10), surface)


HELD_CASES = [
    (150, 25, "45.285", "207.77"),
    (100, 25, "49.281", "198.07"),
    (150, 20, "74.833", "189.14"),
]


@pytest.mark.parametrize(("mass", "room", "minutes", "degrees"), HELD_CASES)
def test_cups_with_heat_capacity_and_loss_held_constant(mass, room, minutes, degrees):
    # SciPy, tight tolerances: 1.9 J/(g K), 10 W/(m2 K), rate constant 2.4e-4 per second.
    values = cup(2.4e-4, mass, room, room, HELD)
    gel, peak = by_scipy(values)
    assert gel / 60 == pytest.approx(float(minutes), abs=0.001)
    assert peak - ICE_POINT == pytest.approx(float(degrees), abs=0.01)
    curve = heat_curve.heat_curve(values)
    assert curve.gel_time / 60 == pytest.approx(float(minutes), rel=0.0005)
    assert curve.peak_temperature - ICE_POINT == pytest.approx(float(degrees), abs=0.1)


def test_the_card_of_45_minutes_150_g_25_degrees():
    # SciPy: rate constant 2.37855e-4 per second, peak 178.5 degC; 100 g gel at 49.07 min, peak 167.8 degC.
    found = heat_curve.rate_constant(card(2700.0, 25, 150))
    assert found == pytest.approx(2.37855e-4, rel=0.0002)
    assert agrees(heat_curve.gel_time(cup(found, 150, 25, 25)) / 60, "45.000")
    larger, smaller = cup(2.37855e-4, 150, 25, 25), cup(2.37855e-4, 100, 25, 25)
    for values, minutes, degrees in ((larger, "45.00", "178.5"), (smaller, "49.07", "167.8")):
        gel, peak = by_scipy(values)
        assert agrees(gel / 60, minutes)
        assert agrees(peak - ICE_POINT, degrees)
        curve = heat_curve.heat_curve(values)
        assert agrees(curve.peak_temperature - ICE_POINT, degrees)
        assert curve.gel_time / 60 == pytest.approx(float(minutes), rel=0.0005)


@pytest.mark.parametrize(("conversion", "minutes"), [(0.25, "109.453"), (0.58, "246.985")])
def test_the_film_at_one_temperature(conversion, minutes):
    # Integrated by hand, and by SciPy: rate constant 2.4e-4 per second.
    kinetics = [CONSTANT[name] for name in KINETICS]
    assert agrees(cup_heat.film_gel_time(2.4e-4, 298.15, conversion, *kinetics) / 60, minutes)
    found = solve_ivp(
        lambda _, state: [cup_heat.conversion_rate(state[0], 298.15, 2.4e-4, *kinetics)],
        (0, cup_heat.film_gel_time(2.4e-4, 298.15, conversion, *kinetics)),
        [0.0],
        rtol=1e-10,
        atol=1e-12,
    )
    assert found.y[0, -1] == pytest.approx(conversion, rel=1e-7)
    constant = cup_heat.cool_rate_constant(float(minutes) * 60, 298.15, conversion, *kinetics)
    assert constant == pytest.approx(2.4e-4, rel=1e-5)


def test_a_film_at_another_temperature_gels_by_the_time_factor():
    # 57 kJ/mol: time against 25 degC is 3.3807 at 10 degC.
    kinetics = [CONSTANT[name] for name in KINETICS]
    cold = cup_heat.film_gel_time(2.4e-4, 283.15, 0.58, *kinetics)
    assert agrees(cold / cup_heat.film_gel_time(2.4e-4, 298.15, 0.58, *kinetics), "3.3807")
    slower = cup_heat.cool_rate_constant(2700.0, 283.15, 0.58, *kinetics)
    assert agrees(slower / cup_heat.cool_rate_constant(2700.0, 298.15, 0.58, *kinetics), "3.3807")


@pytest.mark.parametrize(
    ("mass", "number", "degrees"), [(30, "0.4256", "38"), (50, "0.6483", "149"), (100, "1.0668", "198")]
)
def test_semenovs_number_tells_the_cool_cup_from_the_one_that_runs_off(mass, number, degrees):
    # Semenov's criterion and SciPy: rate constant 2.4e-4 per second, 10 W/(m2 K), 1.9 J/(g K), 25 degC.
    values = cup(2.4e-4, mass, 25, 25, HELD)
    kinetics = [CONSTANT[name] for name in KINETICS]
    surface = values["cup_surface"]
    found = cup_heat.semenov_number(mass, surface, 2.4e-4, 298.15, 400e7, 10000.0, *kinetics)
    assert agrees(found, number)
    assert agrees(by_scipy(values)[1] - ICE_POINT, degrees)
    depth = mass / surface / 1.10
    film = cup_heat.film_semenov_number(depth, 1.10, 2.4e-4, 298.15, 400e7, 10000.0, *kinetics)
    assert film == pytest.approx(found, rel=1e-12)


def test_the_fastest_conversion_is_the_0_19719_of_semenovs_number():
    # The greatest of (0.1 + x)(1 - x)².
    found = minimize_scalar(
        lambda x: -cup_heat.conversion_rate(x, 298.15, 1.0, *[CONSTANT[name] for name in KINETICS]),
        bounds=(0, 1),
        method="bounded",
    )
    assert agrees(-found.fun, "0.19719")


def test_an_eighth_of_an_inch_at_30_degrees_runs_off_and_a_sixteenth_does_not():
    # The model of a film on insulating board, not tested by experiment: a 45 min resin at 30 degC.
    rate = heat_curve.rate_constant(card(2700.0, 25, 150))
    kinetics = [CONSTANT[name] for name in ("reaction_heat", "air_loss", *KINETICS)]
    assert cup_heat.film_semenov_number(0.3175, 1.10, rate, 303.15, *kinetics) > 0.5
    assert cup_heat.film_semenov_number(0.15875, 1.10, rate, 303.15, *kinetics) < 0.5


def test_a_film_thickens_two_to_three_times_later_than_the_cup():
    # The model of the cup's heat; 30 % to gel, where a mix has thickened by hand.
    rate = heat_curve.rate_constant(card(2700.0, 25, 150))
    kinetics = [CONSTANT[name] for name in KINETICS]
    thick = {**cup(rate, 150, 25, 25), "gel_conversion": 0.25}
    later = cup_heat.film_gel_time(rate, 298.15, 0.25, *kinetics) / heat_curve.gel_time(thick)
    assert 2 < later < 3


@pytest.mark.parametrize(
    ("degrees", "shown"), [(25, 0), (44.9, 0), (45, 1), (64.9, 1), (65, 2), (100, 2), (100.1, 3), (178.5, 3)]
)
def test_classes_of_a_peak(degrees, shown):
    # Engineering classes: cool under 45, warm to 65, hot to 100, dangerous over.
    limits = [CONSTANT[name] for name in ("cup_warm_from", "cup_hot_from", "cup_dangerous_from")]
    assert cup_heat.heat_class(degrees + ICE_POINT, *limits) == shown


def test_the_band_is_a_quarter_either_way():
    # A conduction check of the model.
    assert cup_heat.earliest_gel_time(2400.0, 0.25) == pytest.approx(1800.0, rel=1e-12)
    assert cup_heat.latest_gel_time(2400.0, 0.25) == pytest.approx(3000.0, rel=1e-12)


GRID = [
    cup(rate, mass, resin, air)
    for rate in (2e-5, 2.4e-4, 3e-3)
    for mass in (1, 10, 30, 50, 150, 1000, 5000)
    for resin, air in ((5, 5), (25, 25), (45, 45), (35, 20))
]


def test_the_curve_is_scipys_within_half_a_percent_over_hot_cold_tiny_and_large_cups():
    for values in GRID:
        gel, peak = by_scipy(values)
        curve = heat_curve.heat_curve(values)
        assert curve.gel_time == pytest.approx(gel, rel=NEAR)
        rise = max(peak - values["air_temperature"], 1.0)
        assert curve.peak_temperature == pytest.approx(peak, abs=NEAR * rise)


def test_the_phones_curve_is_scipys_within_half_a_percent_too(phone):
    for values, found in zip(GRID, phone.evaluate(IN_JAVASCRIPT, GRID), strict=True):
        gel, peak = by_scipy(values)
        rise = max(peak - values["air_temperature"], 1.0)
        assert found[0] == pytest.approx(gel, rel=NEAR)
        assert found[1] == pytest.approx(peak, abs=NEAR * rise)
        curve = heat_curve.heat_curve(values)
        assert found[0] == pytest.approx(curve.gel_time, rel=1e-6)
        assert found[1] == pytest.approx(curve.peak_temperature, rel=1e-6)


CARDS = [
    card(pot_life, temperature, mass)
    for pot_life in (30.0, 600.0, 2700.0, 14400.0, 259200.0)
    for temperature in (0, 25, 60)
    for mass in (1, 40, 150, 5000)
]


def test_a_cup_like_the_cards_gels_on_the_cards_pot_life_in_both_languages(phone):
    cups = []
    for values in CARDS:
        rate = heat_curve.rate_constant(values)
        degrees = values["pot_life_temperature"] - ICE_POINT
        cups.append(values | cup(rate, values["pot_life_mass"], degrees, degrees))
        assert heat_curve.gel_time(cups[-1]) == pytest.approx(values["pot_life"], rel=1e-5)
    for values, found in zip(cups, phone.evaluate(IN_JAVASCRIPT, cups), strict=True):
        assert found[3] == pytest.approx(values["rate_constant"], rel=1e-6)
        assert found[0] == pytest.approx(values["pot_life"], rel=1e-5)


def test_time_alone_scales_a_cup_that_cannot_lose_heat():
    # Without a loss the rate constant only stretches time: the peak is the adiabatic rise.
    closed = {**HELD, "air_loss": 0.0}
    curve = heat_curve.heat_curve(cup(2.4e-4, 100, 25, 25, closed))
    twice = heat_curve.heat_curve(cup(4.8e-4, 100, 25, 25, closed))
    assert curve.gel_time == pytest.approx(2 * twice.gel_time, rel=1e-3)
    assert agrees((curve.moments[-1].state[1] - 298.15) / curve.moments[-1].state[0], "210.53")


def test_a_warmer_room_is_shorter_than_the_card_by_no_more_than_the_time_factor():
    rate = heat_curve.rate_constant(card(2700.0, 25, 150))
    warm = heat_curve.gel_time(cup(rate, 150, 35, 35))
    # 57 kJ/mol: time against 25 degC is 0.4742 at 35 degC; a cup that warms itself follows it loosely.
    factor = working_time.working_time(
        1.0, 298.15, 308.15, CONSTANT["activation_energy"], CONSTANT["gas_constant"]
    )
    assert agrees(factor, "0.4742")
    assert warm / 2700.0 == pytest.approx(factor, rel=0.1)


def test_the_phone_takes_under_5_ms_at_a_quarter_of_its_speed(phone):
    session = phone.context.new_cdp_session(phone)
    session.send("Emulation.setCPUThrottlingRate", {"rate": 4})
    try:
        curve, constant = phone.evaluate(TIMED, [card(2700.0, 25, 150), cup(2.378e-4, 150, 25, 25)])
    finally:
        session.send("Emulation.setCPUThrottlingRate", {"rate": 1})
    print(f"heat curve {curve:.2f} ms, rate constant {constant:.2f} ms")
    assert curve < 5
    assert constant < 5
