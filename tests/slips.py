"""Slips of the pen: every name in pages, tables and templates mistyped, one at a time."""

import re
from dataclasses import replace

from webapp import forms
from webapp.bench import stages, walk
from webapp.sheet import choices, report

# What these marks hold is read by people, or is a key of its own: it is the name of nothing.
NO_NAMES = {"data-good", "data-wrong", "data-fold"}
NAMING = {"id", "for", "href", "aria-controls", "aria-labelledby", "aria-describedby"}
TAG = re.compile(r"<[a-z][^<>]*>")
ATTRIBUTE = re.compile(r'\s([a-z-]+)(?:="([^"]*)")?')


# What a template hands to a macro: names of cells, fields of inputs, and sections.
HANDED = re.compile(
    r'part\.(?:figure|because|checks)\("([^"*]+)"'
    r'|(?:part\.fact|slowest_fact)\((?:"[^"]*"|called\("[^"]*"\)), "([^"]+)"'
    r'|slowest\("([^"]+)"|\bfields\.(\w+)|\bcalled\("([^"]+)"\)|part\.groups\("([^"]+)"|fields_in\("([^"]+)"'
)


def mistyped(name):
    """The name with a slip in its middle; no name of the project has this letter twice in such a place."""
    half = len(name) // 2
    return f"{name[:half]}xq{name[half:]}"


def marks_in(page):
    """Each attribute of a rendered page that names something: its template, its tag, and where it lies."""
    for template, tag in tags_in(page):
        for found in ATTRIBUTE.finditer(tag):
            if found[1].startswith("data-") or found[1] in NAMING:
                yield template, tag, found


def tags_in(page, holding=""):
    """Each tag of a rendered page that holds some words, with the id of the template that it stands in."""
    ends = [(found.end(), found[1]) for found in re.finditer(r'<template id="([^"]+)">', page)]
    for tag in TAG.finditer(page):
        if holding not in tag[0]:
            continue
        before = [template for end, template in ends if end <= tag.start()]
        is_inside = before and page.rfind("</template>", 0, tag.start()) < page.rfind(
            "<template ", 0, tag.start()
        )
        yield before[-1] if is_inside else "", tag[0]


def slips_in(tag, found):
    """The tag with its attribute's own name mistyped, and with each word of its value mistyped."""
    attribute, value = found[1], found[2] or ""
    if attribute.startswith("data-"):
        yield tag[: found.start(1)] + f"data-{mistyped(attribute[5:])}" + tag[found.end(1) :]
    is_naming = attribute not in NO_NAMES and not (attribute == "href" and not value.startswith("#"))
    is_naming = is_naming and not (attribute == "id" and not tag.startswith("<template"))
    for word in re.finditer(r"\S+", value) if is_naming else ():
        start, end = found.start(2) + word.start(), found.start(2) + word.end()
        yield tag[:start] + mistyped(word[0]) + tag[end:]


def slips_of_tables():
    """Each table with one of its names mistyped: its module, its attribute and the table."""
    for place, stage in enumerate(stages.STAGES):
        for slip in slips_of_stage(stage):
            table = (*stages.STAGES[:place], slip, *stages.STAGES[place + 1 :])
            yield stages, "STAGES", table
    yield walk, "LAST_HAND_STAGE", mistyped(walk.LAST_HAND_STAGE)
    for start, name in walk.MOMENTS.items():
        yield walk, "MOMENTS", {**walk.MOMENTS, start: mistyped(name)}
    for quantity, choice in choices.CHOICES.items():
        slips = [replace(choice, by=mistyped(choice.by))]
        slips += [
            replace(choice, cells={**choice.cells, key: mistyped(cell)}) for key, cell in choice.cells.items()
        ]
        slips += [
            replace(
                choice,
                cells={mistyped(each) if each == key else each: cell for each, cell in choice.cells.items()},
            )
            for key in choice.cells
        ]
        yield from ((choices, "CHOICES", {**choices.CHOICES, quantity: slip}) for slip in slips)
    for attribute in ("GREATEST_OF", "LEAST_OF"):
        picks = getattr(choices, attribute)
        for quantity, pick in picks.items():
            for part in ("of", "needed"):
                for slip in slips_of_words(getattr(pick, part)):
                    yield choices, attribute, {**picks, quantity: replace(pick, **{part: slip})}
    for section, groups in forms.GROUPS.items():
        yield (
            forms,
            "GROUPS",
            {mistyped(each) if each == section else each: of for each, of in forms.GROUPS.items()},
        )
        for place, (title, members) in enumerate(groups):
            for slip in slips_of_words(members):
                table = (*groups[:place], (title, slip), *groups[place + 1 :])
                yield forms, "GROUPS", {**forms.GROUPS, section: table}
    for name, (by, options) in forms.ONLY_WITH.items():
        yield forms, "ONLY_WITH", {mistyped(name): (by, options)}
        yield forms, "ONLY_WITH", {name: (mistyped(by), options)}
        yield from ((forms, "ONLY_WITH", {name: (by, slip)}) for slip in slips_of_words(options))
    for level, lines in report.LINES.items():
        yield from ((report, "LINES", {level: slip}) for slip in slips_of_words(lines))


def slips_of_words(words):
    """Some words with one of them mistyped, each in its turn."""
    for place, word in enumerate(words):
        yield (*words[:place], mistyped(word), *words[place + 1 :])


def slips_of_stage(stage):
    """A stage with one of its names mistyped: a cell, a check, or what its clock counts by."""
    for part in ("counts_from", "bound", "only"):
        if getattr(stage, part):
            yield replace(stage, **{part: mistyped(getattr(stage, part))})
    yield from (replace(stage, figures=slip) for slip in slips_of_words(stage.figures))
    yield from (replace(stage, duration=slip) for slip in slips_of_words(stage.duration))
    for holder, parts in (("beside", ("cells",)), ("lines", ("cells", "checks"))):
        rows = getattr(stage, holder)
        for place, row in enumerate(rows):
            for part in parts:
                for slip in slips_of_words(getattr(row, part)):
                    slipped = replace(row, **{part: slip})
                    yield replace(stage, **{holder: (*rows[:place], slipped, *rows[place + 1 :])})


def slips_in_templates(templates):
    """Each template with a name mistyped that it hands to a macro, and the line of that name."""
    for file, source in templates.items():
        for handed in HANDED.finditer(source):
            group = handed.lastindex
            for word in re.finditer(r"\w+", handed[group]):
                start, end = handed.start(group) + word.start(), handed.start(group) + word.end()
                line = source.count("\n", 0, start) + 1
                yield file, line, mistyped(word[0]), source[:start] + mistyped(word[0]) + source[end:]
