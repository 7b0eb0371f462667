"""One name for one thing: what a field is called, its sentences call it too."""

import re

import pytest

from webapp.errors import QuantityError
from webapp.inputs.table import INPUTS
from webapp.quantities import bounds, read_input
from webapp.sheet.label_table import LABELS
from webapp.sheet.labels import called, in_sentence
from webapp.sheet.wiring import load_sheet

NAMES = sorted({node.name for node in load_sheet().nodes} | set(load_sheet().book.checks))
# Words that begin a sentence about a thing, and so are no name of it.
FRAGMENTS = re.compile(
    r"^(at|in|by|for|after|you|its|a|an|one|the)\b|\b(is|are|by|for|after|every|takes|holds|costs)$", re.I
)
BRITISH = re.compile(r"olour|abour|velling|metre|grey", re.I)


@pytest.mark.parametrize("name", NAMES)
def test_a_name_is_called_by_a_noun_in_american_words(name):
    label = called(name)
    assert re.match(r"[A-Z]", label), label
    assert not FRAGMENTS.search(label), label
    assert not BRITISH.search(label), label
    assert not re.search(r"[_{}]|  ", label), label


def test_no_two_names_are_called_the_same():
    labels = [called(name).lower() for name in NAMES]
    assert sorted(labels) == sorted(set(labels))


def test_the_table_of_labels_holds_no_name_that_is_gone_and_none_with_a_label_of_its_own():
    assert set(LABELS) - set(NAMES) == set()
    assert set(LABELS) & (set(INPUTS) | set(load_sheet().constants)) == set()


@pytest.mark.parametrize(
    ("name", "label", "inside"),
    [
        ("cup_diameter", "Cup width", "cup width"),
        ("pot_life_temperature", "Pot life temperature", "pot life temperature"),
        ("stated_ratio_a", "Ratio figure for A", "ratio figure for A"),
        ("groove_angle", "V-bit angle", "V-bit angle"),
        ("gravity", "Gravity", "gravity"),
        ("most_coats", "Most coats for this depth", "most coats for this depth"),
        ("levelling_time", "Leveling time", "leveling time"),
        ("part_a_share", "Part A share", "part A share"),
    ],
)
def test_a_label_begins_small_inside_a_sentence(name, label, inside):
    assert (called(name), in_sentence(name)) == (label, inside)


def test_the_phone_calls_every_name_the_same(phone):
    theirs = phone.evaluate(
        """async (names) => {
          const { called, inSentence } = await import(new URL("sheet/quantities.js", window.modules));
          await import(new URL("sheet/reasons.js", window.modules));
          return names.map((name) => [called(name), inSentence(name)]);
        }""",
        NAMES,
    )
    assert theirs == [[called(name), in_sentence(name)] for name in NAMES]


@pytest.mark.parametrize(
    "name", [name for name, each in INPUTS.items() if each.kind not in ("choice", "text", "temperature")]
)
def test_what_cannot_be_is_refused_by_the_fields_own_label(name):
    each = INPUTS[name]
    least, _ = bounds(each)
    with pytest.raises(QuantityError, match=f"^{re.escape(each.label)} cannot be negative"):
        read_input("-1", each, {})
    if least:
        with pytest.raises(QuantityError, match=f"^{re.escape(each.label)} cannot be 0"):
            read_input("0", each, {})
