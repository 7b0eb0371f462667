"""The phone without signal: the server is ended, not only the network, as that is what flight mode means."""

import hashlib
import json
import re

import pytest
from playwright.sync_api import expect

from e2e.bench import Sheet
from e2e.faulty import faulty_host
from e2e.pages import Menu
from e2e.server import Server, changed_checkout, static_host
from e2e.stored import wait_until
from webapp.baker.site import bake

READY = re.compile("ready offline")
CACHES = r"async () => (await caches.keys()).filter((name) => /^sixteenth \/ \w+$/.test(name))"
IS_WAITING = "async () => Boolean((await navigator.serviceWorker.getRegistration()).waiting)"
GROUP_CACHES = r"async () => (await caches.keys()).filter((name) => /^sixteenth \/ \w+ working$/.test(name))"


def make_ready(page, server):
    """Open the page and wait until it says that it is ready for offline."""
    page.goto(server.address)
    expect(page.locator(".head")).to_contain_text(READY, timeout=20_000)


def expect_job_sheet(page):
    """The job sheet is there and works out an answer."""
    expect(page.get_by_role("heading", name="Sixteenth job sheet")).to_be_attached()
    expect(page.locator("[data-cell='mix_volume']:visible").first).to_contain_text("fl")


def test_in_flight_mode_everything_still_works(page, own_server):
    make_ready(page, own_server)
    own_server.stop()
    page.reload()
    expect_job_sheet(page)


def test_any_address_leads_to_the_job_sheet_without_signal(page, own_server):
    make_ready(page, own_server)
    own_server.stop()
    for path in ("?from=home-screen", "index.html", "faces/12", "nowhere?a=b#c"):
        page.goto(own_server.address + path)
        expect_job_sheet(page)


def expect_group(page, says):
    """The menu says this of what lies beside the core."""
    lines = page.locator("[data-part=offline]")
    expect(lines).to_contain_text(f"How it is worked out: {says}", timeout=20_000)


def test_every_module_and_working_is_at_hand_without_signal(page, own_server):
    make_ready(page, own_server)
    expect_group(page, "ready offline")
    worker = page.evaluate("async () => (await (await fetch('service-worker.js')).text())")
    lists = re.findall(r'(?:const FILES =|"files":) (\[.*?\])', worker, re.DOTALL)
    names = [name for each in lists for name in json.loads(each)]
    assert any("working/" in name for name in names)
    own_server.stop()
    for name in names:
        status = page.evaluate("async (name) => (await fetch(name)).status", name)
        assert status == 200, name


def test_a_group_whose_download_breaks_off_holds_nothing_up_and_is_not_called_ready(page, tmp_path):
    site = bake(tmp_path / "site")
    pack = site.folder / f"v-{site.version}" / "working.txt"
    whole = pack.read_bytes()
    pack.write_bytes(whole[: len(whole) // 2])
    with static_host(site.folder) as address:
        page.goto(address)
        expect(page.locator(".head")).to_contain_text(READY, timeout=20_000)
        expect_group(page, "not yet on this phone")
        page.wait_for_function(f"async () => (await ({GROUP_CACHES})()).length === 0")
    page.reload()
    expect_job_sheet(page)
    page.locator(".figure[data-cell=mix_volume]:visible").first.click()
    expect(page.get_by_text("This part is not on the phone yet.")).to_be_visible()


def test_a_group_that_is_missing_is_fetched_at_the_next_visit(page, own_server):
    make_ready(page, own_server)
    expect_group(page, "ready offline")
    page.evaluate(
        f"async () => {{ for (const name of await ({GROUP_CACHES})()) await caches.delete(name); }}"
    )
    page.reload()
    expect_group(page, "ready offline")
    own_server.stop()
    page.reload()
    page.locator(".figure[data-cell=mix_volume]:visible").first.click()
    expect(page.locator("dialog[data-part=working]")).to_be_visible()


def test_pages_of_the_server_are_left_to_the_server(page, own_server):
    make_ready(page, own_server)
    page.goto(f"{own_server.address}plan")
    expect(page.get_by_role("heading", name="A second opinion on a job")).to_be_visible()


def test_a_download_that_breaks_off_leaves_nothing_half_kept(page, tmp_path):
    site = bake(tmp_path / "site")
    (site.folder / f"v-{site.version}" / "later.txt").unlink()
    with static_host(site.folder) as address:
        page.goto(address)
        expect_job_sheet(page)
        expect(page.locator("[data-part=offline]")).to_contain_text("the download broke off", timeout=20_000)
        assert page.evaluate(CACHES) == []


def test_a_static_host_serves_it_from_a_folder_of_its_own(page, tmp_path):
    bake(tmp_path / "host" / "shop" / "sixteenth")
    with static_host(tmp_path / "host") as host:
        page.goto(f"{host}shop/sixteenth/")
        expect(page.locator(".head")).to_contain_text(READY, timeout=20_000)
    page.goto(f"{host}shop/sixteenth/some/where?else")
    expect_job_sheet(page)
    assert page.url == f"{host}shop/sixteenth/"


UNLIKE = """async (sums) => {
  const unlike = [];
  for (const [name, sum] of Object.entries(sums)) {
    const cached = await caches.match(new URL(name === "index.html" ? "" : name, location).href);
    const digest = new Uint8Array(await crypto.subtle.digest("SHA-256", await cached.arrayBuffer()));
    const found = [...digest].map((byte) => byte.toString(16).padStart(2, "0")).join("");
    if (!found.startsWith(sum)) unlike.push(name);
  }
  return unlike;
}"""


def kept_unlike_baked(page, folder):
    """The names of kept files that are not what was baked."""
    names = [path.relative_to(folder).as_posix() for path in folder.rglob("*") if path.is_file()]
    kept = [name for name in names if re.search(r"^index.html$|\.(js|css|svg|html|webmanifest)$", name)]
    sums = {name: hashlib.sha256((folder / name).read_bytes()).hexdigest()[:12] for name in kept}
    return page.evaluate(UNLIKE, {name: sum for name, sum in sums.items() if name != "service-worker.js"})


@pytest.mark.parametrize("fault", ["torn", "altered"])
@pytest.mark.parametrize("file", ["later.txt", "sixteenth.css"])
def test_a_file_that_is_not_what_was_baked_is_never_called_ready_and_heals(page, server, fault, file):
    folder = server.instance / "site"
    with faulty_host(folder, fault, only=file) as host:
        page.goto(host.address)
        expect(page.locator("[data-part=offline]")).to_contain_text("the download broke off", timeout=20_000)
        expect(page.locator(".head")).not_to_contain_text(READY)
        page.wait_for_function(f"async () => (await ({CACHES})()).length === 0")
        host.mended.set()
        page.reload()
        expect(page.locator(".head")).to_contain_text(READY, timeout=20_000)
        expect_group(page, "ready offline")
        assert kept_unlike_baked(page, folder) == []


EMPTIED = "async () => { for (const name of await caches.keys()) await caches.delete(name); }"


def test_emptied_caches_are_noticed_at_the_next_look_and_mended_when_there_is_signal(page, own_server):
    sheet = Sheet(page)
    sheet.open(own_server.address)
    expect(page.locator(".head")).to_contain_text(READY, timeout=20_000)
    sheet.type_a_face()
    bench = sheet.go_to_the_bench()
    bench.has_own_clock = False
    bench.begin()
    bench.walk_to("B is in")
    own_server.stop()
    page.evaluate(EMPTIED)
    page.evaluate("() => document.dispatchEvent(new Event('visibilitychange'))")
    expect(page.locator("[data-part=offline]")).to_contain_text(re.compile(r"Not yet ready .* files missing"))
    expect(page.locator("[data-part=readiness]")).not_to_contain_text(READY)
    own_server.start()
    page.evaluate("() => document.dispatchEvent(new Event('visibilitychange'))")
    expect(page.locator("[data-part=offline]")).to_contain_text("Ready for offline", timeout=20_000)


@pytest.fixture
def newer(own_server, tmp_path):
    """A server of a newer version, ready to take the other one's place."""
    server = Server(own_server.instance, changed_checkout(tmp_path / "newer", "newer"))
    yield server
    server.stop()


def put_in_place(newer, server):
    """End a server and start the newer one on its port."""
    server.stop()
    newer.port = server.port
    newer.start()


def test_an_old_version_stays_whole_until_the_new_one_is_taken(page, own_server, newer):
    make_ready(page, own_server)
    [old] = page.evaluate(CACHES)
    put_in_place(newer, own_server)
    page.reload()
    assert page.evaluate("() => document.documentElement.dataset.version") is None
    expect_job_sheet(page)
    take = page.get_by_role("button", name="Take it")
    expect(take).to_be_visible(timeout=20_000)
    assert len(page.evaluate(CACHES)) == 2
    take.click()
    expect(page.locator("html[data-version=newer]")).to_be_attached(timeout=20_000)
    expect_job_sheet(page)
    wait_until(page, lambda: len(page.evaluate(CACHES)) == 1)
    [new] = page.evaluate(CACHES)
    assert new != old
    newer.stop()
    page.reload()
    expect(page.locator("html[data-version=newer]")).to_be_attached()
    expect_job_sheet(page)


def test_a_new_version_is_not_offered_while_a_cup_is_in_hand(page, own_server, newer):
    page.clock.install()
    sheet = Sheet(page)
    sheet.open(own_server.address)
    expect(page.locator(".head")).to_contain_text(READY, timeout=20_000)
    sheet.type_a_face()
    bench = sheet.go_to_the_bench()
    bench.begin()
    bench.walk_to("B is in")
    put_in_place(newer, own_server)
    page.reload()
    expect(bench.root).to_be_visible()
    page.wait_for_function("async () => Boolean((await navigator.serviceWorker.getRegistration()).waiting)")
    assert page.evaluate("() => document.documentElement.dataset.version") is None
    expect(page.get_by_role("button", name="Take it")).to_have_count(0)
    bench.leave()
    expect(page.get_by_role("button", name="Take it")).not_to_be_visible()


def offered(page):
    """The button that takes the new version."""
    return page.get_by_role("button", name="Take it")


def wait_for_the_newer(page):
    """Look for a newer version, and wait until it is here, whole."""
    page.evaluate("async () => { await (await navigator.serviceWorker.getRegistration()).update(); }")
    wait_until(page, lambda: page.evaluate(IS_WAITING))


def test_a_relaunch_takes_no_new_version_that_nobody_has_taken(handset, own_server, newer):
    page = handset.start()
    make_ready(page, own_server)
    put_in_place(newer, own_server)
    wait_for_the_newer(page)
    handset.stop()
    page = handset.start()
    page.goto(own_server.address)
    expect_job_sheet(page)
    assert page.evaluate("() => document.documentElement.dataset.version") is None
    offered(page).click()
    expect(page.locator("html[data-version=newer]")).to_be_attached()
    page.reload()
    expect(page.locator("html[data-version=newer]")).to_be_attached()


def test_another_window_swaps_no_version_under_a_cup(page, own_server, newer):
    sheet = Sheet(page)
    sheet.open(own_server.address)
    expect(page.locator(".head")).to_contain_text(READY)
    sheet.type_a_face()
    other = page.context.new_page()
    other.goto(own_server.address)
    Menu(other).open().new_job()
    bench = sheet.go_to_the_bench()
    bench.has_own_clock = False
    bench.begin()
    bench.walk_to("B is in")
    put_in_place(newer, own_server)
    wait_for_the_newer(other)
    # The other window shows another job, so that it is free to take the newer version.
    offered(other).click()
    expect(other.locator(".toast")).to_contain_text("A cup runs in another window")
    assert page.evaluate("() => document.documentElement.dataset.version") is None
    # Even where the newer worker takes over by force the page goes on as it is, and has all of its modules.
    session = page.context.new_cdp_session(page)
    session.send("ServiceWorker.enable")
    session.send("ServiceWorker.skipWaiting", {"scopeURL": own_server.address})
    wait_until(page, lambda: not page.evaluate(IS_WAITING))
    other.close()
    newer.stop()
    bench.tap("B is in")
    bench.expect_button("Mixed")
    assert page.evaluate("() => document.documentElement.dataset.version") is None
    module = "new URL('bench/to-calendar.js?again', document.querySelector('script[type=module]').src).href"
    assert page.evaluate(f"async () => Object.keys(await import({module})).length > 0")
