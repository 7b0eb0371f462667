"""The page's forms: every input of the table has its field, and a field refuses what the table refuses."""

import re

import pytest
from werkzeug.datastructures import MultiDict

from webapp import forms
from webapp.baker.site import render_index, render_later
from webapp.baker.writer import Page
from webapp.inputs.table import INPUTS

SECTIONS = list(dict.fromkeys(row.section for row in INPUTS.values()))


@pytest.fixture(scope="module")
def index():
    """The page with what it takes in after its first screen."""
    page = Page("v-0", "v-0/styles.css", "v-0/app.js", ("v-0/app.js",), "default-src 'none'")
    return render_index(page) + render_later()


@pytest.fixture(scope="module")
def templates(index):
    """What stands in each template of the page by its id, and what stands in none under None."""
    found = dict(re.findall(r'<template id="([^"]+)">(.*?)</template>', index, re.DOTALL))
    return {**found, None: re.sub(r"<template.*?</template>", "", index, flags=re.DOTALL)}


@pytest.mark.parametrize("section", SECTIONS)
def test_a_section_has_a_field_for_each_of_its_inputs(section):
    form = forms.form_of(section)()
    assert list(form._fields) == [row.name for row in INPUTS.values() if row.section == section]


@pytest.mark.parametrize("name", INPUTS)
def test_every_input_has_its_place_on_the_page(name, index):
    assert f'data-choice="{name}"' in index or f'data-input="{name}"' in index


def test_no_field_of_the_page_stands_twice_in_one_row(templates):
    for where, text in templates.items():
        found = re.findall(r'data-(?:choice|field)="([^"]+)"', text)
        assert sorted(found) == sorted(set(found)), where


def test_every_template_that_is_asked_for_is_there(index, templates):
    asked = set(re.findall(r'data-(?:late|template|editor)="([^"]+)"', index))
    assert asked
    assert asked <= set(templates)


def test_a_size_of_a_shape_comes_with_the_shapes_that_ask_for_it(templates):
    assert 'data-asked="shape ring" data-template="size-inner_diameter"' in templates["face-editor"]
    assert 'data-field="inner_diameter"' in templates["size-inner_diameter"]
    assert 'data-field="width" data-when="shape rectangle' in templates["face-editor"]


def test_the_page_carries_no_token(index):
    assert "csrf" not in index.lower()


def test_an_unknown_section_has_no_form():
    with pytest.raises(LookupError, match="'garden'"):
        forms.form_of("garden")


@pytest.mark.parametrize(
    ("name", "typed", "says"),
    [
        ("width", "12 3/8", None),
        ("width", "12 3/8 in", None),
        ("width", "", None),
        ("width", "wide", "does not start with a number"),
        ("width", "-3", "cannot be negative"),
        ("width", "0", "cannot be 0"),
        ("width", "40 m", "is more than 98 ft"),
        ("width", "3/0", "A fraction over 0"),
    ],
)
def test_a_field_refuses_what_its_input_refuses(name, typed, says):
    form = forms.form_of("shape")(MultiDict({"shape": "rectangle", name: typed}), units={"length": "in"})
    assert form.validate() is (says is None)
    assert says is None or says in form.errors[name][0]


def test_a_field_keeps_what_was_typed_verbatim():
    form = forms.form_of("shape")(MultiDict({"width": "12  3/8 IN"}))
    assert form.width.data == "12  3/8 IN"


def test_a_choice_refuses_what_is_no_option():
    form = forms.form_of("shape")(MultiDict({"shape": "cloud"}))
    assert not form.validate()
    assert "shape" in form.errors


def test_a_blank_field_shows_what_stands_for_it():
    fields = forms.page_fields()
    assert fields["contingency"].render_kw["placeholder"] == "10%"
    assert fields["surface_temperature"].render_kw["placeholder"] == "as air"
    assert fields["tack_free_temperature"].render_kw["placeholder"] == "as pot life"
    assert "placeholder" not in fields["air_temperature"].render_kw


def test_fractions_need_a_keyboard_with_space_and_slash():
    fields = forms.page_fields()
    assert fields["width"].render_kw["inputmode"] == "text"
    assert fields["pieces"].render_kw["inputmode"] == "numeric"


def test_every_field_is_called_something_of_its_own_by_a_screen_reader():
    for section in SECTIONS:
        rows = [row for row in INPUTS.values() if row.section == section]
        # Of the shapes' sizes only those of one shape are on the screen at once.
        for shape, _ in INPUTS["shape"].options if section == "shape" else [(None, "")]:
            seen = [
                row
                for row in rows
                if shape is None or shape in forms.options_that_ask("shape_area", row.name)
            ]
            spoken = [row.label for row in seen]
            assert sorted(spoken) == sorted(set(spoken)), section


@pytest.mark.parametrize("section", forms.GROUPS)
def test_groups_hold_every_input_of_their_section_once(section):
    names = [name for _, names in forms.groups_in(section) for name in names]
    names += forms.LAB.get(section, ())
    assert sorted(names) == sorted(forms.fields_in(section))
    assert {name for _, group in forms.GROUPS[section] for name in group} <= set(names)


@pytest.mark.parametrize("section", forms.LAB)
def test_what_only_a_laboratory_asks_stands_in_a_fold_of_its_own(section, templates):
    """The fold lies inside the section's own fold, and nothing else asks for its fields."""
    [fold] = [name for name, text in templates.items() if f'data-late="lab-{section}"' in text]
    assert fold in ("card-figures", "bench-more", "dropper")
    for name in forms.LAB[section]:
        assert [where for where, text in templates.items() if f'data-field="{name}"' in text] == [
            f"lab-{section}"
        ]


@pytest.mark.parametrize("name", forms.ONLY_WITH)
def test_what_shows_with_an_option_names_a_choice_and_its_options(name):
    by, options = forms.ONLY_WITH[name]
    assert name in INPUTS
    assert set(options) <= {value for value, _ in INPUTS[by].options}


def test_a_shape_shows_the_sizes_that_its_formula_asks_for():
    assert forms.options_that_ask("shape_area", "diameter") == ["circle", "half_round"]
    assert "rectangle" in forms.options_that_ask("shape_area", "width")
