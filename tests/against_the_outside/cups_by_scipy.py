"""Cups and cards as values of the sheet, and what SciPy makes of the rates of their heat."""

from scipy.integrate import solve_ivp
from scipy.optimize import minimize_scalar

from tests.amounts import USUAL_VALUES
from webapp.formulas import cup_heat, cure_rate, heat_rates

# The heat that the tables were integrated with: 400 J/g, and a mix that starts by a tenth.
REACTION_HEAT = 400e7
CONSTANT = {
    **USUAL_VALUES,
    "reaction_heat": REACTION_HEAT,
    "cure_self_start": USUAL_VALUES["self_start"],
}
HELD = {
    **CONSTANT,
    "heat_capacity": 1.9e7,
    "heat_capacity_slope": 0.0,
    "air_loss": 10000.0,
    "air_loss_slope": 0.0,
}
KINETICS = ("cure_self_start", "activation_energy", "gas_constant", "kinetic_reference_temperature")
ICE_POINT = 273.15


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


def rate_constant(pot_life, temperature, mass, constants=CONSTANT):
    """The rate constant of a card: pot life in s, its temperature in degC, its mass in g."""
    loss = constants["air_loss"]
    capacity = constants["heat_capacity"]
    surface = cure_rate.card_cup_surface(mass, 7.5, 1.10)
    return cure_rate.rate_constant(
        pot_life,
        cure_rate.card_cup_cooling(loss, surface, mass, capacity),
        constants["gel_conversion"],
        temperature + ICE_POINT,
        cure_rate.adiabatic_rise(constants["reaction_heat"], capacity),
        constants["cure_self_start"],
        cure_rate.activation_temperature(constants["activation_energy"], constants["gas_constant"]),
        cure_rate.heat_capacity_growth(constants["heat_capacity_slope"], capacity),
        cure_rate.heat_capacity_limit(constants["greatest_heat_capacity"], capacity),
        cure_rate.air_loss_growth(constants["air_loss_slope"], loss),
        constants["kinetic_reference_temperature"],
    )


def rates_of(v):
    """What the book's formulas say of a cup's conversion and temperature at one moment."""

    def rates(_, state):
        conversion, temperature = map(float, state)
        kinetics = [v[name] for name in KINETICS]
        curing = heat_rates.conversion_rate(conversion, temperature, v["rate_constant"], *kinetics)
        capacity = heat_rates.mix_heat_capacity(
            temperature,
            v["heat_capacity"],
            v["heat_capacity_slope"],
            v["greatest_heat_capacity"],
            v["kinetic_reference_temperature"],
        )
        air = v["air_temperature"]
        loss = heat_rates.surface_loss(temperature, air, v["air_loss"], v["air_loss_slope"])
        cup = (v["reaction_heat"], v["cup_mass"], v["cup_surface"])
        return curing, heat_rates.heating_rate(curing, capacity, loss, temperature, air, *cup)

    return rates


def by_scipy(values):
    """Gel time in s and peak in K, by an implicit method with tight tolerances."""

    def gelled(_, state):
        return state[0] - values["gel_conversion"]

    def cured(_, state):
        return state[0] - 0.9999

    gelled.direction = cured.direction = 1
    cured.terminal = True
    found = solve_ivp(
        rates_of(values),
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
