"""The page's forms, made from the table of inputs: plain WTForms, so a cached page carries no token."""

from collections.abc import Collection, Mapping
from typing import Any

from wtforms import Field, Form, RadioField, StringField, ValidationError
from wtforms.validators import Optional as MayStayBlank

from webapp.errors import QuantityError
from webapp.inputs.entry import Input
from webapp.inputs.table import INPUTS
from webapp.quantities import default_text, read_input, unit_of_input
from webapp.sheet.choices import CHOICES
from webapp.sheet.labels import in_sentence
from webapp.sheet.wiring import load_sheet

# `12 3/8` needs space and slash, which a phone's number pads lack; only whole counts do without.
KEYBOARDS = {"count": "numeric"}
KEYBOARD = "text"

# How the longer sections are cut into groups; what stands in no group comes last, so nothing is left out.
GROUPS: dict[str, tuple[tuple[str, tuple[str, ...]], ...]] = {
    "card": (
        (
            "Ratio",
            (
                "ratio_basis",
                "stated_ratio_a",
                "stated_ratio_b",
                "density_a",
                "density_b",
                "stated_ratio_tolerance",
            ),
        ),
        ("Working time", ("pot_life", "pot_life_temperature", "pot_life_mass", "mix_time")),
        ("Mist and tint", ("first_mist", "second_mist", "tint_limit")),
        (
            "Cure",
            (
                "stated_tack_free_time",
                "tack_free_temperature",
                "stated_recoat_opens",
                "stated_recoat_closes",
                "recoat_temperature",
                "least_cure_temperature",
                "stated_cure_time",
                "cure_temperature",
                "stated_top_coat_wait",
                "top_coat_temperature",
            ),
        ),
        (
            "Depth and coverage",
            ("greatest_coat_depth", "greatest_cup_mass", "stated_coverage", "stated_coverage_depth"),
        ),
        (
            "Flow",
            (
                "stated_viscosity",
                "viscosity_temperature",
                "second_viscosity",
                "second_viscosity_temperature",
            ),
        ),
    ),
    "bench": (
        (
            "Cups",
            (
                "fill_share",
                "vessels_per_cup",
                "cup_diameter",
                "residual_film",
                "contingency",
                "planned_coats",
            ),
        ),
        ("Time", ("usable_share", "square_foot_time", "tint_time", "transfer_time")),
        ("Level", ("bench_slope", "allowed_share")),
        ("Stock and hours", ("stock_a", "stock_b", "labour_time", "wage")),
    ),
    "face": (
        ("Ground", ("texture_depth", "pocket_depth")),
        ("Edge", ("edge", "panel_edge_angle", "edge_radius", "raised_edge_height")),
        ("Grooves", ("groove", "groove_width", "groove_angle", "bit_diameter", "groove_length")),
    ),
    "colour": (
        (
            "Drops",
            (
                "drop_basis",
                "nominal_drop_volume",
                "counted_volume",
                "counted_drops",
                "first_share",
                "recipe_load",
                "allowed_error",
            ),
        ),
    ),
}

# What only a laboratory asks, in a fold of its own at the end of each section.
LAB: dict[str, tuple[str, ...]] = {
    "card": (
        "surface_tension",
        "wetting_angle",
        "hydrogen_equivalent_weight",
        "epoxide_equivalent_weight",
        "activation_energy",
        "self_start",
    ),
    "bench": ("ripple_length", "bubble_diameter"),
    "colour": (
        "tip_diameter",
        "tint_surface_tension",
        "tint_density",
        "absorption_ratio",
        "scattering_power",
        "tested_load",
        "tested_depth",
    ),
}

# Fields that stand on the page only with some options of a choice.
ONLY_WITH: dict[str, tuple[str, tuple[str, ...]]] = {
    "panel_edge_angle": ("edge", ("sharp", "raised")),
    "edge_radius": ("edge", ("rounded",)),
    "raised_edge_height": ("edge", ("raised",)),
    "groove_width": ("groove", ("v", "round")),
    "groove_length": ("groove", ("v", "round")),
    "groove_angle": ("groove", ("v",)),
    "bit_diameter": ("groove", ("round",)),
    "stated_span": ("shape", ("known", "lettering")),
    "nominal_drop_volume": ("drop_basis", ("nominal",)),
    "counted_volume": ("drop_basis", ("counted",)),
    "counted_drops": ("drop_basis", ("counted",)),
    "tip_diameter": ("drop_basis", ("dropper",)),
    "tint_surface_tension": ("drop_basis", ("dropper",)),
    "tint_density": ("drop_basis", ("dropper",)),
    "first_share": ("tint", ("drops",)),
    "recipe_load": ("tint", ("recipe",)),
    "allowed_error": ("tint", ("recipe",)),
}


class QuantityField(StringField):
    """A field for a typed quantity: it keeps the text as typed and reads it within its input's bounds."""

    def __init__(self, *args: Any, row: Input, **details: Any) -> None:
        super().__init__(*args, **details)
        self.row = row

    def pre_validate(self, form: Form) -> None:
        """Refuse what cannot be read, with the sentence that belongs beside the field."""
        try:
            read_input(self.data, self.row, getattr(form, "units", {}))
        except QuantityError as error:
            raise ValidationError(str(error)) from error


class SectionForm(Form):
    """A form of one section of the table; `units` are the job's, in which a bare number is meant."""

    def __init__(self, *args: Any, units: Mapping[str, str] | None = None, **details: Any) -> None:
        self.units = dict(units or {})
        super().__init__(*args, **details)


def form_of(section: str) -> type[SectionForm]:
    """Return the form of a section of the table of inputs, its fields in the table's order.

    >>> list(form_of("room")()._fields)[:2]
    ['air_temperature', 'surface_temperature']
    """
    rows = [row for row in INPUTS.values() if row.section == section]
    if not rows:
        raise LookupError(f"no input stands in the section {section!r}")
    return type(f"{section.capitalize()}Form", (SectionForm,), {row.name: _field_of(row) for row in rows})


def _field_of(row: Input) -> Any:
    if row.kind == "choice":
        return RadioField(row.label, choices=dict(row.options), default=row.default, description=row.help)
    look = {
        "class": "field__input",
        "data-input": row.name,
        "inputmode": KEYBOARDS.get(row.kind, KEYBOARD),
    }
    if row.kind == "text":
        return StringField(row.label, description=row.help, render_kw=look)
    hint = placeholder_of(row)
    if hint:
        look["placeholder"] = hint
    return QuantityField(row.label, [MayStayBlank()], row=row, description=row.help, render_kw=look)


def placeholder_of(row: Input) -> str:
    """Return what a blank field stands for: its default, or the name of the input that takes its place."""
    if row.fallback_input:
        words, own = in_sentence(row.fallback_input).split(), in_sentence(row.name).split()
        # "as air" is enough where both are temperatures; a field is narrow.
        return " ".join(["as", *(words[:-1] if words[1:] and words[-1] == own[-1] else words)])
    return default_text(row, unit_of_input(row, {}))


def page_fields() -> dict[str, Field]:
    """Return a field for every input of the page by name, unbound, for the templates to place."""
    sections = dict.fromkeys(row.section for row in INPUTS.values())
    forms = [form_of(section)() for section in sections]
    return {name: field for form in forms for name, field in form._fields.items()}


def fields_in(section: str, without: Collection[str] = ()) -> list[str]:
    """Return the names of a section's inputs, in the table's order, without those placed elsewhere."""
    return [row.name for row in INPUTS.values() if row.section == section and row.name not in without]


def groups_in(section: str, without: Collection[str] = ()) -> list[tuple[str, list[str]]]:
    """Return a section's inputs in titled groups, the ungrouped ones last, without those placed elsewhere."""
    left = fields_in(section, (*without, *LAB.get(section, ())))
    groups = []
    for title, names in GROUPS.get(section, ()):
        groups.append((title, [name for name in names if name in left]))
        left = [name for name in left if name not in names]
    return [(title, names) for title, names in [*groups, ("More", left)] if names]


def sizes() -> dict[str, list[str]]:
    """Return the sizes that shapes ask for, each with the shapes that do, in the table's order.

    >>> sizes()["diameter"]
    ['circle', 'half_round']
    """
    asking = {
        name: options_that_ask("shape_area", name) or options_that_ask("shape_edge", name)
        for name in fields_in("shape")
    }
    return {name: shapes for name, shapes in asking.items() if shapes}


def options_that_ask(quantity: str, asked: str) -> list[str]:
    """Return the options of a quantity's choice whose formula asks for an input.

    >>> options_that_ask("shape_area", "diameter")
    ['circle', 'half_round']
    """
    formulas = load_sheet().book.formulas
    return [option for option, cell in CHOICES[quantity].cells.items() if asked in formulas[cell].parameters]
