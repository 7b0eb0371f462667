"""Hiding: whether black and white under a tinted film look alike, and how much tint that takes."""

import math

from webapp.formulas.book import check, formula
from webapp.units import Centimetres, Ratio, Share, Truth


@formula(level="colour")
def contrast_ratio(absorption_ratio: Ratio, scattering_power: Ratio, white_reflectance: Share) -> Share:
    """How alike black and white look under the film: its reflectance over black for that over white.

    Range: a film that scatters; without a gloss correction.

    Example: K/S 0.01 and SX 5 over a white of 0.80: 0.94221.

    >>> round(contrast_ratio(0.01, 5.0, 0.80), 5)
    0.94221

    Source: Kubelka, Munk, Z. tech. Phys. 12 (1931) 593; hyperbolic form of Kubelka, J. Opt. Soc. Am. 38
    (1948) 448 (both from memory).
    """
    kubelka_a = 1 + absorption_ratio
    kubelka_b = (kubelka_a**2 - 1) ** 0.5
    fading = math.exp(-2 * kubelka_b * scattering_power)
    spread = kubelka_b * (1 + fading) / (1 - fading)
    over_black = 1 / (kubelka_a + spread)
    over_white = (1 - white_reflectance * (kubelka_a - spread)) / (kubelka_a - white_reflectance + spread)
    return over_black / over_white


@formula(level="colour")
def hiding_power(absorption_ratio: Ratio, white_reflectance: Share, full_hiding_ratio: Share) -> Ratio:
    """Scattering power (SX) at which the film just hides in full.

    Range: colours whose film can reach the ratio; the contrast ratio solved for SX, a quadratic.

    Example: K/S 0.1: SX 4.134.

    >>> round(hiding_power(0.1, 0.80, 0.98), 3)
    4.134

    Source: Kubelka, Munk, Z. tech. Phys. 12 (1931) 593 (from memory), turned round; full hiding at 0.98:
    ISO 6504-3:2019, ASTM D2805 (from memory).
    """
    kubelka_a = 1 + absorption_ratio
    kubelka_b = (kubelka_a**2 - 1) ** 0.5
    lacking = 1 - full_hiding_ratio
    square = full_hiding_ratio * white_reflectance
    rest = white_reflectance - lacking * kubelka_a - square * kubelka_a**2
    spread = (lacking + (lacking**2 - 4 * square * rest) ** 0.5) / (2 * square)
    return math.log((spread + kubelka_b) / (spread - kubelka_b)) / (2 * kubelka_b)


@formula(level="colour")
def hiding_load(
    hiding_power: Ratio,
    scattering_power: Ratio,
    tested_load: Share,
    tested_depth: Centimetres,
    least_depth: Centimetres,
) -> Share:
    """Tint load, by volume, at which the thinnest face of the colour hides in full.

    Range: loads low enough that grains of pigment do not crowd each other.

    Example: SX 10 at a load of 2% and 1 mm, where SX 8.168 hides: 1.6336% at 1 mm, half of it at 2 mm.

    >>> round(hiding_load(8.168, 10.0, 0.02, 0.1, 0.1), 6)
    0.016336
    >>> round(hiding_load(8.168, 10.0, 0.02, 0.1, 0.2), 6)
    0.008168

    Source: Kubelka-Munk: the same hiding needs the same load x depth, as C(2K, 2S, X) = C(K, S, 2X).
    """
    return tested_load * (hiding_power / scattering_power) * (tested_depth / least_depth)


@check(
    level="colour",
    severity="caution",
    says="Full hiding would take {cell:hiding_load} of tint, more than the {label:tint_limit} of "
    "{cell:tint_limit}. Do not add more: hide the background another way.",
    beside="hiding_load",
    would_do=(
        "Pour deeper.",
        "Prime the background in the color.",
        "Use a stronger tint.",
    ),
)
def hiding_past_limit(hiding_load: Share, tint_limit: Share) -> Truth:
    """True where full hiding needs more tint than the limit.

    >>> hiding_past_limit(0.03, 0.02), hiding_past_limit(0.01, 0.02)
    (True, False)
    """
    return hiding_load > tint_limit
