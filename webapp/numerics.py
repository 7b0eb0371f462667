"""Short generic numerics: a stiff integrator of rates, a search for a root, a quadrature.

`static/lib/numerics.js` is the twin. Nothing here knows of resin: what is integrated is handed in.
"""

from collections.abc import Callable
from dataclasses import dataclass

State = tuple[float, float]
Rates = Callable[[State], State]

MOST_STEPS = 2000
MOST_HALVINGS = 40
NUDGE = 1e-7
POINTS = (
    (0.1834346424956498, 0.3626837833783620),
    (0.5255324099163290, 0.3137066458778873),
    (0.7966664774136267, 0.2223810344533745),
    (0.9602898564975363, 0.1012285362903763),
)


@dataclass(frozen=True)
class Moment:
    """A state at a time, with the rates at which it changes."""

    time: float
    state: State
    rates: State


def rosenbrock_step(rates: Rates, start: Moment, length: float, scales: State) -> tuple[State, State]:
    """Return the state one step later and the error of that, by the L-stable RODAS3 of order 3.

    Source: Sandu et al., Atmos. Environ. 31 (1997) 3459 (from memory); held to SciPy in the tests.
    """
    (a, b), (c, d) = _slopes(rates, start, scales)
    corner = 2 / length
    determinant = (corner - a) * (corner - d) - b * c

    def solve(first: float, second: float) -> State:
        return (
            ((corner - d) * first + b * second) / determinant,
            ((corner - a) * second + c * first) / determinant,
        )

    (x, y), (now_x, now_y) = start.state, start.rates
    k1 = solve(now_x, now_y)
    k2 = solve(now_x + 4 * k1[0] / length, now_y + 4 * k1[1] / length)
    u = rates((x + 2 * k1[0], y + 2 * k1[1]))
    k3 = solve(u[0] + (k1[0] - k2[0]) / length, u[1] + (k1[1] - k2[1]) / length)
    v = rates((x + 2 * k1[0] + k3[0], y + 2 * k1[1] + k3[1]))
    k4 = solve(
        v[0] + (k1[0] - k2[0] - 8 / 3 * k3[0]) / length, v[1] + (k1[1] - k2[1] - 8 / 3 * k3[1]) / length
    )
    return (x + 2 * k1[0] + k3[0] + k4[0], y + 2 * k1[1] + k3[1] + k4[1]), k4


def _slopes(rates: Rates, at: Moment, scales: State) -> tuple[State, State]:
    (x, y), (f, g) = at.state, at.rates
    dx, dy = NUDGE * scales[0], NUDGE * scales[1]
    by_x, by_y = rates((x + dx, y)), rates((x, y + dy))
    return ((by_x[0] - f) / dx, (by_y[0] - f) / dy), ((by_x[1] - g) / dx, (by_y[1] - g) / dy)


def integrate(
    rates: Rates,
    start: State,
    scales: State,
    tolerance: float,
    first_step: float,
    done: Callable[[Moment], bool],
) -> list[Moment]:
    """Step a pair of rates through time until `done`; steps are as long as the tolerance allows."""
    moments = [Moment(0.0, start, rates(start))]
    length = first_step
    for _ in range(MOST_STEPS):
        last = moments[-1]
        if done(last):
            break
        state, error = rosenbrock_step(rates, last, length, scales)
        off = max(abs(error[0]) / scales[0], abs(error[1]) / scales[1]) / tolerance
        if off <= 1:
            moments.append(Moment(last.time + length, state, rates(state)))
        length *= min(5.0, max(0.2, 0.9 / max(off, 1e-9) ** (1 / 3)))
    return moments


def crossing(
    rates: Rates, before: Moment, after: Moment, scales: State, measure: Callable[[Moment], float]
) -> Moment:
    """Return the moment between two at which a measure passes zero, stepping again from the earlier one."""

    def at(time: float) -> Moment:
        state, _ = rosenbrock_step(rates, before, time - before.time, scales)
        return Moment(time, state, rates(state))

    ends = (before.time, after.time)
    return at(root(lambda each: measure(at(each)), ends, (measure(before), measure(after)), 1e-10))


def root(function: Callable[[float], float], ends: State, at_ends: State, near: float) -> float:
    """Return where a function comes near zero between two ends of unlike sign, by the Illinois method."""
    (low, high), (at_low, at_high) = ends, at_ends
    side = 0
    middle = high
    for _ in range(MOST_HALVINGS):
        middle = (low * at_high - high * at_low) / (at_high - at_low)
        value = function(middle)
        if abs(value) <= near:
            break
        if (value > 0) == (at_high > 0):
            high, at_high = middle, value
            at_low *= 0.5 if side == 1 else 1.0
            side = 1
        else:
            low, at_low = middle, value
            at_high *= 0.5 if side == -1 else 1.0
            side = -1
    return middle


def root_near(function: Callable[[float], float], start: float, near: float) -> float:
    """Return where a falling function passes zero, by longer and longer strides from a start.

    The first stride is right for a slope of -1.
    """
    here, at_here = start, function(start)
    if abs(at_here) <= near:
        return here
    stride = at_here
    there, at_there = here + stride, function(here + stride)
    while abs(at_there) > near and (at_there > 0) == (at_here > 0):
        stride *= 2
        here, at_here = there, at_there
        there += stride
        at_there = function(there)
    return root(function, (here, there), (at_here, at_there), near)


def area_under(function: Callable[[float], float], low: float, high: float, strips: int) -> float:
    """Return the integral of a smooth function, by Gauss's eight points in each strip."""
    half = (high - low) / strips / 2
    total = 0.0
    for strip in range(strips):
        middle = low + (2 * strip + 1) * half
        for at, weight in POINTS:
            total += weight * (function(middle - at * half) + function(middle + at * half))
    return total * half
