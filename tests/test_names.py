"""No wrong name reaches a phone: each name that stands anywhere is altered, one at a time, and refused."""

import re
from dataclasses import replace

import pytest
from jinja2 import FunctionLoader

from tests.slips import marks_in, mistyped, slips_in, slips_in_templates, slips_of_tables, tags_in
from webapp.baker import site
from webapp.bench import stages
from webapp.errors import BakeError
from webapp.names.check import check_choices, check_names, names_of, refusals
from webapp.names.pages import MARKS, asked_by, elements_of, levels_of
from webapp.names.scripts import ASKS, LISTS, asked_by_scripts, bare, given_by_scripts
from webapp.names.tables import asked_by_choices, asked_by_tables
from webapp.sheet import choices
from webapp.sheet.wiring import load_sheet


@pytest.fixture(scope="module")
def texts():
    """Pages, scripts, styles and templates as they are."""
    return site.own_texts()


@pytest.fixture(scope="module")
def names(texts):
    """Every name that is asked for, and all that are known."""
    return names_of(texts, load_sheet())


@pytest.fixture(scope="module")
def is_refused(names):
    """Tell whether any of some names is unknown."""
    return lambda asked: any(not names.known.has(each) for each in asked)


def test_every_name_is_known_as_the_sources_are(texts):
    check_choices()
    check_names(texts, load_sheet())


def test_every_mark_of_the_rendered_pages_is_refused_once_it_is_mistyped(texts, is_refused):
    levels = levels_of([element for page in texts.pages.values() for element in elements_of(page)])
    slips = [
        (template, slip)
        for page in texts.pages.values()
        for template, tag, found in marks_in(page)
        for slip in slips_in(tag, found)
    ]
    baked = []
    for template, slip in slips:
        [element] = elements_of(slip)
        if not is_refused(asked_by(replace(element, template=template), levels)):
            baked.append((template, slip))
    assert baked == []
    print(f"{len(slips)} marks altered")
    assert len(slips) > 1500


def test_a_name_of_another_level_is_refused_where_it_is_not(names):
    """A cell that only a colour has, asked of a face, stays blank for ever."""
    leveled = [each for each in names.asked if each.level and each.kind in ("cell", "input", "choice")]
    everything = {each.name: each for each in leveled}.values()
    count = 0
    for asked in leveled:
        for other in everything:
            if asked.kind == other.kind and asked.level not in names.known.levels_of(other):
                assert not names.known.has(replace(asked, name=other.name))
                count += 1
    assert count > 1000


def test_every_name_in_a_table_is_refused_once_it_is_mistyped(monkeypatch, is_refused):
    book = load_sheet().book
    count = 0
    for module, attribute, table in slips_of_tables():
        with monkeypatch.context() as patched:
            patched.setattr(module, attribute, table)
            asked = asked_by_choices() if module is choices else asked_by_tables(book)
            assert is_refused(asked), f"{attribute}: {table}"
        count += 1
    print(f"{count} names altered")
    assert count > 350


def test_every_figure_that_a_check_stands_beside_is_refused_once_it_is_mistyped(is_refused):
    book = load_sheet().book
    for name, check in book.checks.items():
        slipped = {**book.checks, name: replace(check, beside=mistyped(check.beside))}
        assert is_refused(asked_by_tables(replace(book, checks=slipped))), name


def test_every_name_in_a_script_or_style_is_refused_once_it_is_mistyped(texts, is_refused):
    sources = {name: bare(source) for name, source in texts.scripts.items()} | dict(texts.styles)
    count = 0
    for address, source in sources.items():
        for asked in [*asked_by_scripts({address: source}), *given_by_scripts({address: source})]:
            lines = source.splitlines()
            pattern = rf"(?<!\w){re.escape(asked.name)}(?!\w)"
            for found in re.finditer(pattern, lines[asked.line - 1]):
                line = lines[asked.line - 1]
                slip = line[: found.start()] + mistyped(asked.name) + line[found.end() :]
                slipped = {address: "\n".join([*lines[: asked.line - 1], slip, *lines[asked.line :]])}
                given = [replace(each, kind=f"use of the {each.kind}") for each in given_by_scripts(slipped)]
                if is_refused([*asked_by_scripts(slipped), *given]):
                    count += 1
                    break
            else:
                assert not asked.name, f"{asked.file}:{asked.line}: {asked.name}"
    print(f"{count} names altered")
    assert count > 250


@pytest.fixture
def refusals_with(texts, names):
    """Say what is refused once a template has another source; only that one is read anew."""
    sources = dict(texts.templates)
    levels = levels_of([element for page in texts.pages.values() for element in elements_of(page)])

    def load(name):
        source = sources[name]
        return source, None, lambda: sources[name] is source

    environment = site.new_environment()
    environment.loader = FunctionLoader(load)
    written = environment.globals["written"]

    def refused(name, source, slip):
        written.clear()
        sources[name] = source
        try:
            index = environment.get_template("index.html").render(page=site.NO_PAGE)
            later = environment.get_template("later.html").render()
        except BakeError as error:
            return [str(error)]
        finally:
            sources[name] = texts.templates[name]
        asked = [
            each
            for page in (index, later)
            for template, tag in tags_in(page, slip)
            for each in asked_by(replace(elements_of(tag)[0], template=template), levels)
        ]
        return refusals(asked, names.known, replace(texts, written=written))

    return refused


def test_every_name_that_a_template_hands_to_a_macro_is_refused_at_its_line(texts, refusals_with):
    count = 0
    for file, line, slip, source in slips_in_templates(texts.templates):
        refused = refusals_with(file, source, slip)
        assert refused, slip
        for sentence in refused:
            assert sentence.startswith(f"webapp/templates/{file}:{line}: ")
            assert repr(slip) in sentence
        count += 1
    print(f"{count} names altered")
    assert count > 100


def line_of(words, source):
    return 1 + next(place for place, line in enumerate(source.splitlines()) if words in line)


def test_a_name_in_a_template_is_refused_with_its_line_level_and_near_misses(texts, refusals_with):
    source = texts.templates["rows.html"]
    line = line_of('"face_area") }}', source)
    slipped = source.replace('"face_area") }}', '"face_aera") }}')
    assert refusals_with("rows.html", slipped, "face_aera") == [
        f"webapp/templates/rows.html:{line}: data-cell: there is no cell 'face_aera' on the level face; "
        "near misses: face_area, face_share, shape_area"
    ]


def test_an_input_in_a_template_is_refused_with_its_line_and_near_misses(texts, refusals_with):
    source = texts.templates["rows.html"]
    line = line_of("fields.depth", source)
    assert refusals_with("rows.html", source.replace("fields.depth", "fields.dpeth"), "dpeth") == [
        f"webapp/templates/rows.html:{line}: the template: there is no input 'dpeth'; "
        "near misses: depth, width"
    ]


def test_a_cell_of_another_level_is_refused_with_the_level_asked(texts):
    page = texts.pages["index.html"].replace('data-cell="face_volume"', 'data-cell="mix_volume"', 1)
    with pytest.raises(BakeError) as refused:
        check_names(replace(texts, pages={**texts.pages, "index.html": page}), load_sheet())
    says = "data-cell: there is no cell 'mix_volume' on the level face; it stands on the level cup"
    assert says in str(refused.value)
    assert re.search(r"webapp/templates/rows\.html:\d+", str(refused.value))


def test_a_name_in_a_script_is_refused_with_its_line_and_near_misses(texts):
    source = texts.scripts["menu/readiness.js"]
    line = line_of('part("readiness")', source)
    scripts = {**texts.scripts, "menu/readiness.js": source.replace('part("readiness")', 'part("readines")')}
    with pytest.raises(BakeError) as refused:
        check_names(replace(texts, scripts=scripts), load_sheet())
    says = f"static/menu/readiness.js:{line}: part(): there is no part 'readines'; near misses: readiness"
    assert says in str(refused.value)


def test_a_bake_stops_at_a_wrong_name_in_a_table(monkeypatch):
    mix = next(stage for stage in stages.STAGES if stage.name == "mix")
    slipped = tuple(replace(each, duration=("mix_tme",)) if each is mix else each for each in stages.STAGES)
    monkeypatch.setattr(stages, "STAGES", slipped)
    with pytest.raises(BakeError, match=r"^webapp/bench/stages\.py:\d+: .*'mix_tme'; near misses: mix_time"):
        site.own_sources()


@pytest.mark.parametrize(("kind", "by", "pattern"), ASKS)
def test_every_way_in_which_a_script_asks_is_met(kind, by, pattern, texts):
    assert any(re.search(pattern, source) for source in texts.scripts.values())


@pytest.mark.parametrize(("kind", "name"), LISTS)
def test_every_list_of_names_is_in_a_script(kind, name, names):
    assert [each.kind for each in names.asked if each.by == name]


def test_every_mark_that_may_stand_in_a_page_does(names):
    assert {each.name for each in names.asked if each.kind == "mark"} == set(MARKS)
