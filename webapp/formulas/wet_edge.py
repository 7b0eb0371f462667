"""Wet edge: whether each cup lands while the cup that it meets on the face still flows."""

import math

from webapp.formulas.book import check, formula, valid_range
from webapp.formulas.planning_rules import poured_before_heat
from webapp.formulas.rules import whole_down
from webapp.units import (
    Centimetres,
    Count,
    CubicCentimetres,
    ErgsPerGramKelvin,
    GramsPerCubicCentimetre,
    HeatLoss,
    KelvinDifference,
    Kelvins,
    PerKelvin,
    PerSecond,
    Ratio,
    Seconds,
    Share,
    Truth,
)


@formula(level="job")
def wet_edge_time(working_time_on_face: Seconds, film_gel_time: Seconds, wet_edge_share: Share) -> Seconds:
    """From the moment A touches B of a cup until its film no longer joins the next without a seam.

    Range: thin films.
    Example: at a working time of 90 min and a film that gels after 249.2 min, 89.7 min: its doubling.

    >>> round(wet_edge_time(5400, 249.2 * 60, 0.36) / 60, 1)
    89.7

    Source: never past the doubling of the viscosity, at 0.36 of the film's gel (Castro, Macosko 1982, from
    memory; our choice).
    """
    return min(working_time_on_face, wet_edge_share * film_gel_time)


@formula(level="face")
def cup_spreading_time(face_spreading_time: Seconds, pieces: Count, cups_on_piece: Count) -> Seconds:
    """Time to pour and spread one cup on one piece of this face.

    Range: any.
    Example: two pieces that take 20 min, two cups on each, 5 min a cup.

    >>> cup_spreading_time(1200, 2, 2) / 60
    5.0

    Source: arithmetic.
    """
    return face_spreading_time / pieces / cups_on_piece


@formula(level="face")
def join_age(changeover: Seconds, cup_spreading_time: Seconds, neighbour_gap: Count) -> Seconds:
    """How old the film is, since its A touched B, when the cup that meets it lands: one person alone.

    Range: cups poured one after another.
    Example: 5 min of changing over and 10 min of spreading: neighbors meet after 20 min.

    >>> join_age(300, 600, 1) / 60
    20.0

    Source: arithmetic: the older cup's changeover and spreading, then the younger one's changeover.
    """
    return neighbour_gap * (changeover + cup_spreading_time) + changeover


@formula(level="face")
def join_age_of_two(changeover: Seconds, cup_spreading_time: Seconds, neighbour_gap: Count) -> Seconds:
    """The same with two people: one mixes the next cup while the other spreads this one.

    Range: two people.
    Example: 5 min of changing over and 10 min of spreading: neighbors meet after 15 min.

    >>> join_age_of_two(300, 600, 1) / 60
    15.0

    Source: arithmetic.
    """
    return changeover + neighbour_gap * max(cup_spreading_time, changeover)


@formula(level="face")
def reachable_gap(wet_edge_time: Seconds, changeover: Seconds, cup_spreading_time: Seconds) -> Count:
    """How many cups later one person can still meet a wet edge.

    Range: below 1 not even the next cup meets it.
    Example: a wet edge of 30 min, 5 min of changing over, 10 min of spreading: the next cup.

    >>> reachable_gap(1800, 300, 600), reachable_gap(300, 300, 600)
    (1, 0)

    Source: arithmetic.
    """
    return max(0, whole_down((wet_edge_time - changeover) / (changeover + cup_spreading_time)))


@formula(level="face")
def reachable_gap_of_two(wet_edge_time: Seconds, changeover: Seconds, cup_spreading_time: Seconds) -> Count:
    """How many cups later two people can still meet a wet edge.

    Range: below 1 not even the next cup meets it.
    Example: a wet edge of 30 min, 5 min of changing over, 10 min of spreading: two cups.

    >>> reachable_gap_of_two(1800, 300, 600)
    2

    Source: arithmetic.
    """
    return max(0, whole_down((wet_edge_time - changeover) / max(cup_spreading_time, changeover)))


@formula(level="face")
def piece_heat_volume(
    face_coat_volume: CubicCentimetres,
    pieces: Count,
    contingency: Share,
    cup_residue: CubicCentimetres,
    total_face_coat_volume: CubicCentimetres,
    total_face_spreading_time: Seconds,
    changeover: Seconds,
    gel_share: Share,
    cup_density: GramsPerCubicCentimetre,
    nominal_density: GramsPerCubicCentimetre,
    cup_diameter: Centimetres,
    air_loss: HeatLoss,
    heat_capacity: ErgsPerGramKelvin,
    rate_constant: PerSecond,
    gel_conversion: Share,
    resin_temperature: Kelvins,
    air_temperature: Kelvins,
    adiabatic_rise: KelvinDifference,
    cure_self_start: Ratio,
    activation_temperature: KelvinDifference,
    heat_capacity_growth: PerKelvin,
    heat_capacity_limit: Ratio,
    air_loss_growth: PerKelvin,
    kinetic_reference_temperature: Kelvins,
) -> CubicCentimetres:
    """How much of a cup that covers one piece can be poured before its own heat makes it too thick.

    Range: any; 0 where the cup sets before it can be poured.
    Example: at 25 °C, 0.1 mL a second from a cup of 136 mL that gels after 45 min: 172.5 mL.

    >>> model = (400 / 1.8, 0.1, 57e10 / 8.314462618e7, 0.004 / 1.8, 2.4 / 1.8, 0.08 / 9, 298.15)
    >>> cup = (0.75, 1.1, 1.1, 7.5, 9000, 1.8e7, 2.37884e-4, 0.58, 298.15, 298.15, *model)
    >>> round(piece_heat_volume(150 / 1.1, 1, 0, 0, 150, 1500, 300, *cup), 1)
    172.5

    Source: the cup's own heat, as in planning.
    """
    poured = poured_before_heat(
        face_coat_volume * (1 + contingency) / pieces + cup_residue,
        total_face_coat_volume / total_face_spreading_time,
        changeover, gel_share, cup_density, nominal_density, cup_diameter,
        air_loss / heat_capacity, rate_constant, gel_conversion, resin_temperature - air_temperature,
        air_temperature, adiabatic_rise, cure_self_start, activation_temperature, heat_capacity_growth,
        heat_capacity_limit, air_loss_growth, kinetic_reference_temperature,
    )  # fmt: skip
    return max(0 * poured, poured)


@formula(level="face")
def piece_cup_volume(
    face_coat_volume: CubicCentimetres,
    pieces: Count,
    contingency: Share,
    cup_residue: CubicCentimetres,
    piece_cup_limit: CubicCentimetres,
) -> CubicCentimetres:
    """How large a cup would be that covers one piece of a face alone.

    Range: a cup that can be poured in time, before its own heat, and that the card allows.
    Example: two pieces of 100 mL each, with 10% extra and 3 mL left behind: 113 mL.

    >>> round(piece_cup_volume(200, 2, 0.1, 3, 150), 6), round(piece_cup_volume(200, 2, 0.1, 3, 90), 6)
    (113.0, 90)

    Source: arithmetic.
    """
    return min(face_coat_volume * (1 + contingency) / pieces + cup_residue, piece_cup_limit)


@valid_range(says="No cup can cover a whole piece: time, its own heat or the card's largest batch end it.")
def piece_cup_volume_range(
    face_coat_volume: CubicCentimetres,
    pieces: Count,
    contingency: Share,
    cup_residue: CubicCentimetres,
    piece_cup_limit: CubicCentimetres,
) -> Truth:
    """A cup that can be poured in time, before its own heat, and that the card allows."""
    return face_coat_volume * (1 + contingency) / pieces + cup_residue <= piece_cup_limit


@formula(level="face")
def wet_edge_pot_life(pot_life: Seconds, join_age: Seconds, wet_edge_time: Seconds) -> Seconds:
    """The pot life with which one person would still meet a wet edge.

    Range: a resin of the same kind.
    Example: a pot life of 30 min whose edge stays wet for 40 min is to reach 60 min: 45 min.

    >>> wet_edge_pot_life(1800, 3600, 2400) / 60
    45.0

    Source: arithmetic: all times of a cure grow alike.
    """
    return pot_life * join_age / wet_edge_time


@formula(level="face")
def wet_edge_temperature(
    surface_temperature: Kelvins,
    join_age: Seconds,
    wet_edge_time: Seconds,
    activation_temperature: KelvinDifference,
) -> Kelvins:
    """How cool a face would have to be for one person to still meet a wet edge.

    Range: any.
    Example: what takes 20 min at 30 °C takes 29.2 min at 25 °C.

    >>> round(wet_edge_temperature(303.15, 29.22, 20, 6855.52) - 273.15, 1)
    25.0

    Source: Arrhenius, turned round.
    """
    return 1 / (1 / surface_temperature + math.log(join_age / wet_edge_time) / activation_temperature)


@check(
    level="face",
    severity="caution",
    says="One person cannot keep the edge wet on this face. {label:cups_on_piece}: {cell:cups_on_piece}. "
    "Where a cup meets an earlier one, that film is {cell:join_age} old; after {cell:wet_edge_time} "
    "the two no longer flow together, and the seam shows.",
    beside="join_age",
    would_do=(
        "Work with two people: one mixes the next cup while the other spreads this one, and the film is "
        "{cell:join_age_of_two} old.",
        "Mix larger cups, within their own heat: one of {cell:piece_cup_volume} covers a piece alone.",
        "Let only cups meet that follow each other closely. Cups back that are reached wet: alone "
        "{cell:reachable_gap}, with two people {cell:reachable_gap_of_two}.",
        "Use a slower resin: a {label:pot_life} of {cell:wet_edge_pot_life} would do.",
        "Work in a cooler room: with the face at {cell:wet_edge_temperature} the edge stays wet.",
        "Break the face at a raised line or a groove into {cell:cups_on_piece} parts, a cup for each.",
    ),
)
def wet_edge_lost(join_age: Seconds, wet_edge_time: Seconds, cups_on_piece: Count) -> Truth:
    """True where more than one cup goes on a piece and one lands past the wet edge.

    >>> wet_edge_lost(2000, 1800, 2), wet_edge_lost(1700, 1800, 2), wet_edge_lost(2000, 1800, 1)
    (True, False, False)
    """
    return min(cups_on_piece - 1, 1) * join_age > wet_edge_time
