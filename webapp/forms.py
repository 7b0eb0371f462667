"""The page's forms, made from the table of inputs: plain WTForms, so a cached page carries no token."""

from collections.abc import Mapping
from typing import Any

from wtforms import Field, Form, RadioField, StringField, ValidationError
from wtforms.validators import Optional as MayStayBlank

from webapp.errors import QuantityError
from webapp.inputs import INPUTS, Input
from webapp.quantities import read_input
from webapp.sheet.choices import CHOICES
from webapp.sheet.wiring import load_sheet

# `12 3/8` needs space and slash, which a phone's number pads lack; only whole counts do without.
KEYBOARDS = {"count": "numeric"}
KEYBOARD = "text"


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
        "autocomplete": "off",
        "autocapitalize": "off",
        "autocorrect": "off",
        "spellcheck": "false",
        "enterkeyhint": "next",
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
        return f"as {INPUTS[row.fallback_input].label.lower()}"
    return row.default or ""


def page_fields() -> dict[str, Field]:
    """Return a field for every input of the page by name, unbound, for the templates to place."""
    sections = dict.fromkeys(row.section for row in INPUTS.values())
    forms = [form_of(section)() for section in sections]
    return {name: field for form in forms for name, field in form._fields.items()}


def fields_in(section: str) -> list[str]:
    """Return the names of a section's inputs, in the table's order."""
    return [row.name for row in INPUTS.values() if row.section == section]


def options_that_ask(quantity: str, asked: str) -> list[str]:
    """Return the options of a quantity's choice whose formula asks for an input.

    >>> options_that_ask("shape_area", "diameter")
    ['circle']
    """
    formulas = load_sheet().book.formulas
    return [option for option, cell in CHOICES[quantity].cells.items() if asked in formulas[cell].parameters]
