"""The baker: repeatable, whole, and never leaving an old version behind."""

import gzip
import json
import shutil
from dataclasses import replace

import brotli
import pytest

from webapp.baker.assets import first_screen, join_styles, lean
from webapp.baker.groups import Group
from webapp.baker.site import bake, own_sources
from webapp.baker.stamp import STAMP, fingerprint_of, leave_stamp, standing_site
from webapp.baker.writer import Sources, write_site
from webapp.errors import BakeError


@pytest.fixture
def static(tmp_path):
    """A tiny app: two modules at first, one later, two styles, a worker."""
    folder = tmp_path / "static"
    write(folder / "app.js", 'import { add } from "./lib/sum.js";\nadd();\nimport("./later.js");\n')
    write(folder / "lib/sum.js", 'import { one } from "../printed.js";\nexport const add = () => one;\n')
    write(folder / "later.js", 'export * from "./lib/sum.js";\n')
    write(folder / "styles/base.css", "body { margin: 0; }\n")
    write(folder / "styles/tokens.css", "/* The order. */\n@layer tokens, base;\n")
    write(folder / "service-worker.js", "self.version = VERSION;\n")
    write(folder / "manifest.webmanifest", '{ "name": "Tiny" }\n')
    write(folder / "icons/mark.svg", "<svg/>\n")
    return folder


def write(path, text):
    path.parent.mkdir(parents=True, exist_ok=True)
    path.write_text(text)


def sources(static, **printed):
    modules = {"printed.js": "export const one = 1;\n", **printed}
    pages = {"later.html": "<p>Later</p>\n"}
    return Sources(
        static, modules, pages, lambda page: f"<link href={page.styles}>{' '.join(page.modules)}\n"
    )


def contents(folder):
    return {
        path.relative_to(folder).as_posix(): path.read_bytes() for path in folder.rglob("*") if path.is_file()
    }


def test_the_same_sources_bake_the_same_bytes(static, tmp_path):
    write_site(tmp_path / "one", sources(static))
    write_site(tmp_path / "other", sources(static))
    assert contents(tmp_path / "one") == contents(tmp_path / "other")


def test_a_second_bake_with_nothing_changed_writes_nothing(static, tmp_path):
    first = write_site(tmp_path / "site", sources(static))
    assert "index.html" in first.written
    assert write_site(tmp_path / "site", sources(static)).written == ()


def test_files_of_the_version_lie_in_its_folder_and_the_rest_beside_it(static, tmp_path):
    site = write_site(tmp_path / "site", sources(static))
    names = {name for name in contents(site.folder) if not name.endswith((".br", ".gz"))}
    folder = f"v-{site.version}"
    assert names == {
        f"{folder}/app.js",
        f"{folder}/later.css",
        f"{folder}/later.html",
        f"{folder}/later.js",
        f"{folder}/later.txt",
        f"{folder}/lib/sum.js",
        f"{folder}/printed.js",
        f"{folder}/sixteenth.css",
        "icons/mark.svg",
        "index.html",
        "manifest.webmanifest",
        "service-worker.js",
    }


@pytest.mark.parametrize("changed", ["app.js", "styles/base.css", "service-worker.js", "icons/mark.svg"])
def test_a_change_makes_a_new_version_and_the_old_folder_goes(static, tmp_path, changed):
    old = write_site(tmp_path / "site", sources(static))
    with (static / changed).open("a") as file:
        file.write("\n/* changed */\n")
    new = write_site(tmp_path / "site", sources(static))
    assert new.version != old.version
    assert [path.name for path in sorted(new.folder.glob("v-*"))] == [f"v-{new.version}"]


def test_a_changed_page_makes_a_new_version_too(static, tmp_path):
    old = write_site(tmp_path / "site", sources(static))
    changed = Sources(static, sources(static).printed, {}, lambda page: f"<p>{page.styles}</p>")
    assert write_site(tmp_path / "site", changed).version != old.version


def test_a_hosts_own_files_are_left_alone(static, tmp_path):
    write(tmp_path / "site/CNAME", "sixteenth.example\n")
    write(tmp_path / "site/.git/HEAD", "ref\n")
    write(tmp_path / "site/v-notes/today.txt", "mine\n")
    write_site(tmp_path / "site", sources(static))
    assert {"CNAME", ".git/HEAD", "v-notes/today.txt"} <= set(contents(tmp_path / "site"))


def test_an_icon_that_is_gone_goes_from_the_site(static, tmp_path):
    write(static / "icons/old.svg", "<svg/>")
    write_site(tmp_path / "site", sources(static))
    (static / "icons/old.svg").unlink()
    write_site(tmp_path / "site", sources(static))
    assert not [name for name in contents(tmp_path / "site") if "old.svg" in name]


def worker_constants(site):
    """The version, files and pack that are written above the worker."""
    head = (site.folder / "service-worker.js").read_text().partition("\n\n")[0]
    found = dict(part.split(" = ", 1) for part in head.removeprefix("const ").split(";\nconst "))
    return {name: json.loads(value.removesuffix(";")) for name, value in found.items()}


def test_the_worker_gets_the_version_every_file_and_the_pack(static, tmp_path):
    write(static / "icons/mark-512.png", "pixels for a home screen")
    site = write_site(tmp_path / "site", sources(static))
    constants = worker_constants(site)
    assert constants["VERSION"] == site.version
    names = {name for name in contents(site.folder) if not name.endswith((".br", ".gz", "512.png"))}
    apart = {"index.html", "service-worker.js", constants["PACK"]}
    assert set(constants["FILES"]) == names - apart
    assert (site.folder / "service-worker.js").read_text().endswith(";\n\nself.version = VERSION;\n")


def test_the_pack_holds_what_the_first_screen_does_without(static, tmp_path):
    site = write_site(tmp_path / "site", sources(static))
    folder = f"v-{site.version}"
    pack = (site.folder / folder / "later.txt").read_text()
    files = dict(entry.split("\n", 1) for entry in pack.removesuffix("\0").split("\0"))
    names = {
        *(f"{folder}/later.{kind}" for kind in ("css", "html", "js")),
        "icons/mark.svg",
        "manifest.webmanifest",
    }
    assert files == {name: (site.folder / name).read_text() for name in names}


LATER_GROUP = Group("rare", "Rare things", ("later.js",))


def grouped(static, *groups):
    return replace(sources(static), groups=groups)


def test_a_group_has_a_pack_of_its_own_and_the_core_goes_without_it(static, tmp_path):
    site = write_site(tmp_path / "site", grouped(static, LATER_GROUP))
    folder = f"v-{site.version}"
    constants = worker_constants(site)
    assert constants["GROUPS"] == [
        {"name": "rare", "says": "Rare things", "pack": f"{folder}/rare.txt", "files": [f"{folder}/later.js"]}
    ]
    assert f"{folder}/later.js" not in constants["FILES"]
    text = (site.folder / f"{folder}/later.js").read_text()
    assert (site.folder / f"{folder}/rare.txt").read_text() == f"{folder}/later.js\n{text}\0"
    assert "later.js" not in (site.folder / f"{folder}/later.txt").read_text()


def test_what_the_core_loads_with_cannot_lie_in_a_group(static, tmp_path):
    with pytest.raises(BakeError, match=r"static/app\.js imports lib/sum\.js as it loads.*the group sums"):
        write_site(tmp_path / "site", grouped(static, Group("sums", "Sums", ("lib/",))))


def test_a_group_without_files_stops_the_bake(static, tmp_path):
    with pytest.raises(BakeError, match="the group letters holds none of the modules: letters/"):
        write_site(tmp_path / "site", grouped(static, Group("letters", "Letters", ("letters/",))))


def test_every_text_has_twins_that_unpack_to_it(static, tmp_path):
    site = write_site(tmp_path / "site", sources(static))
    files = contents(site.folder)
    for name in [name for name in files if not name.endswith((".br", ".gz"))]:
        assert brotli.decompress(files[f"{name}.br"]) == files[name]
        assert gzip.decompress(files[f"{name}.gz"]) == files[name]


def test_a_damaged_twin_is_made_anew(static, tmp_path):
    site = write_site(tmp_path / "site", sources(static))
    twin = site.folder / "index.html.br"
    whole = twin.read_bytes()
    twin.write_bytes(b"damaged")
    write_site(site.folder, sources(static))
    assert twin.read_bytes() == whole


def test_comments_and_indents_stay_at_home_and_every_line_keeps_its_place():
    source = "/**\n * What it is.\n */\nconst a = 1; // beside\n// alone\n  const b = `/* ${a} */`;\n"
    assert lean(source) == "\n\n\nconst a = 1; // beside\n\nconst b = `/* ${a} */`;\n"


def test_a_module_with_a_template_over_several_lines_is_left_alone():
    source = "const text = `\n// no comment\n`;\n"
    assert lean(source) == source


def test_styles_are_joined_in_the_order_of_the_cascade(static):
    assert (
        join_styles(static) == b"\n@layer tokens, base;\n\nbody { margin: 0; }\n:root { --styles-end: 1; }\n"
    )


def test_a_second_file_of_a_concept_follows_the_first(static):
    write(static / "styles/base-print.css", "p {}\n")
    assert join_styles(static).endswith(b"body { margin: 0; }\n\np {}\n:root { --styles-end: 1; }\n")


def test_styles_that_no_first_paint_wears_are_joined_apart(static):
    write(static / "styles/bench-rows.css", "b {}\n")
    write(static / "styles/bench.css", "a {}\n")
    assert join_styles(static, later=True) == b"a {}\n\nb {}\n"
    assert b"{}" not in join_styles(static)


def test_a_style_without_a_place_in_the_order_is_refused(static):
    write(static / "styles/zebra.css", "")
    with pytest.raises(
        BakeError, match=r"^static/styles/zebra\.css has no place in STYLE_ORDER of assets\.py$"
    ):
        join_styles(static)


def test_the_first_screen_is_the_entry_and_what_it_imports_at_once():
    modules = {
        "app.js": b'import { a } from "./a.js";\nimport {\n b,\n} from "./lib/b.js";\nimport("./late.js");\n',
        "a.js": b'/* import "./never.js" */\nexport { b } from "./lib/b.js";\n',
        "lib/b.js": b'import "../c.js";\n',
        "c.js": b"",
        "late.js": b"",
    }
    assert first_screen(modules) == ["app.js", "a.js", "lib/b.js", "c.js"]


@pytest.mark.parametrize(
    ("text", "says"),
    [
        ('import "./gone.js";', "static/app.js imports './gone.js', but there is no gone.js"),
        ('import("./gone.js");', "static/app.js imports './gone.js', but there is no gone.js"),
        ('import "../out.js";', "static/app.js imports '../out.js', outside of static/"),
        ('import "bare";', "static/app.js imports 'bare': a module is imported by a relative address"),
    ],
    ids=["missing", "missing later", "outside", "bare"],
)
def test_an_import_that_leads_nowhere_is_refused(static, tmp_path, text, says):
    write(static / "app.js", text)
    with pytest.raises(BakeError) as refusal:
        write_site(tmp_path / "site", sources(static))
    assert str(refusal.value) == says


def test_a_printed_module_may_not_hide_a_written_one(static, tmp_path):
    write(static / "printed.js", "")
    with pytest.raises(BakeError, match=r"^static/printed\.js stands in the way"):
        write_site(tmp_path / "site", sources(static))


def test_nothing_is_written_where_the_sources_are_refused(static, tmp_path):
    shutil.rmtree(static / "lib")
    with pytest.raises(BakeError):
        write_site(tmp_path / "site", sources(static))
    assert not (tmp_path / "site").exists()


@pytest.fixture
def site(baked, tmp_path):
    """The app's own site, whole, in a folder that a test may harm."""
    return bake(shutil.copytree(baked, tmp_path / "site"))


def test_the_apps_own_site_is_whole(site):
    names = set(contents(site.folder))
    assert {"index.html", "service-worker.js", "manifest.webmanifest", site.styles} <= names
    assert not [name for name in names if name.endswith(".draft")]


def test_a_bake_of_unchanged_sources_finds_the_site_standing(tmp_path):
    first = bake(tmp_path / "site")
    again = bake(tmp_path / "site")
    assert again.written == ()
    assert (again.version, again.styles, set(again.files)) == (first.version, first.styles, set(first.files))


@pytest.mark.parametrize(
    "harm",
    [
        lambda site: (site.folder / site.styles).write_text("body {}"),
        lambda site: (site.folder / "index.html").unlink(),
        lambda site: (site.folder / STAMP).write_text("[]"),
        lambda site: (site.folder / "v-0123456789ab").mkdir(),
    ],
    ids=["a changed file", "a lost file", "a broken stamp", "a version too many"],
)
def test_a_site_that_is_not_whole_is_baked_anew(site, harm):
    before = contents(site.folder)
    harm(site)
    bake(site.folder)
    assert contents(site.folder) == before
    assert [path.name for path in site.folder.glob("v-*")] == [f"v-{site.version}"]


def test_a_changed_source_is_baked_anew(static, tmp_path):
    package = tmp_path / "package"
    write(package / "cli.py", "one = 1\n")
    site = write_site(tmp_path / "site", sources(static))
    before = fingerprint_of(package, static)
    leave_stamp(site, before)
    assert standing_site(site.folder, before) is not None
    for path in (package / "cli.py", static / "lib/sum.js"):
        path.write_text(path.read_text() + "\n")
        assert standing_site(site.folder, fingerprint_of(package, static)) is None
        before = fingerprint_of(package, static)
        leave_stamp(site, before)


def test_every_address_in_the_apps_page_is_relative(site):
    page = (site.folder / "index.html").read_text()
    assert 'href="/' not in page
    assert "://" not in page.replace("http://www.w3.org/", "")


def test_the_apps_first_screen_is_at_most_ten_modules(site):
    page = (site.folder / "index.html").read_text()
    assert 1 <= page.count('rel="modulepreload"') <= 10


def test_the_apps_sources_are_the_same_each_time():
    first, other = own_sources(), own_sources()
    assert (first.printed, first.pages) == (other.printed, other.pages)
