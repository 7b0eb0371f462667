"""The baked files by the book (RFC 9110): forms, tags, conditions, parts; HEAD tells what GET would send."""

import pytest

from tests.test_app import ClosingClient
from tests.wire import ask, serving
from webapp.app import Settings, create_app

ENCODINGS = ("br", "gzip", "")


@pytest.fixture(scope="module")
def app(instance):
    return create_app(Settings(instance))


@pytest.fixture
def client(app):
    return ClosingClient(app)


@pytest.fixture(params=["/", "a script", "/icons/mark-192.png"])
def path(request, instance):
    versioned = next((instance / "site").glob("v-*")).name
    return f"/{versioned}/app.js" if request.param == "a script" else request.param


def got(client, path, encoding="", method="GET", **headers):
    named = {name.replace("_", "-"): value for name, value in headers.items()}
    return client.open(path, method=method, headers={"Accept-Encoding": encoding, **named})


@pytest.mark.parametrize("encoding", ENCODINGS)
def test_a_head_has_the_headers_of_a_get_and_no_body(client, path, encoding):
    whole, head = got(client, path, encoding), got(client, path, encoding, "HEAD")
    assert dict(head.headers) == dict(whole.headers)
    assert head.get_data() == b""
    assert int(head.headers["Content-Length"]) == len(whole.get_data())


def test_each_form_of_a_file_has_a_tag_of_its_own(client):
    forms = [got(client, "/", encoding) for encoding in ENCODINGS]
    assert len({form.headers["ETag"] for form in forms}) == 3
    assert {form.headers["Vary"] for form in forms} == {"Accept-Encoding"}


@pytest.mark.parametrize(
    ("accepted", "encoding"),
    [("br;q=0, gzip", "gzip"), ("gzip;q=0", None), ("BR", "br"), ("*", None), ("bra", None), ("", None)],
)
def test_a_form_that_is_not_taken_is_not_sent(client, accepted, encoding):
    assert got(client, "/", accepted).headers.get("Content-Encoding") == encoding


@pytest.mark.parametrize("encoding", ENCODINGS)
@pytest.mark.parametrize("known", ["{}", "W/{}", '"other", {}', '"other",W/{} , "more"', "*"])
def test_who_has_this_very_form_is_told_so(client, path, encoding, known):
    whole = got(client, path, encoding)
    for method in ("GET", "HEAD"):
        same = got(client, path, encoding, method, If_None_Match=known.format(whole.headers["ETag"]))
        assert same.status_code == 304
        assert same.get_data() == b""
        for name in ("ETag", "Cache-Control", "Vary", "Last-Modified", "Content-Security-Policy"):
            assert same.headers.get(name) == whole.headers.get(name)
        assert not {"Content-Length", "Content-Type", "Content-Encoding"} & set(same.headers.keys())


def test_who_has_another_form_or_none_gets_the_whole(client):
    other = got(client, "/", "gzip").headers["ETag"]
    for known in (other, '"*"', "", '"nothing', "nonsense"):
        assert got(client, "/", "br", If_None_Match=known).status_code == 200


def test_a_tag_counts_before_a_moment(client):
    moment = got(client, "/").headers["Last-Modified"]
    assert got(client, "/", If_Modified_Since=moment).status_code == 304
    assert got(client, "/", If_Modified_Since=moment, If_None_Match='"other"').status_code == 200
    assert got(client, "/", If_Modified_Since="Sat, 01 Jan 2000 00:00:00 GMT").status_code == 200
    assert got(client, "/", If_Modified_Since="yesterday").status_code == 200


def test_a_condition_that_fails_is_said_so(client):
    whole = got(client, "/")
    refused = got(client, "/", If_Match='"other"')
    assert (refused.status_code, refused.get_data(), refused.headers.get("Cache-Control")) == (412, b"", None)
    assert got(client, "/", If_Match=f"W/{whole.headers['ETag']}").status_code == 412
    assert got(client, "/", If_Match=whole.headers["ETag"]).status_code == 200
    assert got(client, "/", If_Match="*").status_code == 200
    assert got(client, "/", If_Unmodified_Since="Sat, 01 Jan 2000 00:00:00 GMT").status_code == 412
    assert got(client, "/", If_Unmodified_Since=whole.headers["Last-Modified"]).status_code == 200


@pytest.mark.parametrize("encoding", ENCODINGS)
@pytest.mark.parametrize(
    ("asked", "begin", "end"),
    [
        ("bytes=0-0", 0, 1),
        ("bytes=3-9", 3, 10),
        ("bytes=7-", 7, None),
        ("bytes=-5", -5, None),
        ("bytes=-99999999", 0, None),
        ("bytes=2-99999999", 2, None),
    ],
)
def test_a_part_is_of_the_form_that_is_sent(client, path, encoding, asked, begin, end):
    whole = got(client, path, encoding)
    part = got(client, path, encoding, Range=asked)
    content = whole.get_data()
    first, last, _ = slice(begin, end).indices(len(content))
    assert part.status_code == 206
    assert part.get_data() == content[begin:end]
    assert part.headers["Content-Range"] == f"bytes {first}-{last - 1}/{len(content)}"
    assert int(part.headers["Content-Length"]) == last - first
    for name in ("ETag", "Content-Encoding", "Content-Type", "Cache-Control", "Vary"):
        assert part.headers.get(name) == whole.headers.get(name)


def test_the_last_byte_is_a_part_and_the_next_is_none(client, path):
    size = len(got(client, path).get_data())
    assert got(client, path, Range=f"bytes={size - 1}-").status_code == 206
    past = got(client, path, Range=f"bytes={size}-")
    assert past.status_code == 416
    assert past.headers["Content-Range"] == f"bytes */{size}"
    assert past.get_data() == b""
    assert "Cache-Control" not in past.headers


@pytest.mark.parametrize(
    "asked",
    ["bytes=5-2", "bytes=0-1,4-5", "lines=0-1", "bytes=", "bytes=a-b", "bytes=--5", "bytes=0-" + "9" * 5000],
)
def test_what_is_no_single_part_gets_the_whole(client, asked):
    whole = got(client, "/")
    answer = got(client, "/", Range=asked)
    if asked.endswith("9" * 5000):
        assert answer.status_code in (200, 206)
        assert answer.get_data() == whole.get_data()
    else:
        assert (answer.status_code, answer.get_data()) == (200, whole.get_data())


def test_a_part_of_another_form_is_not_mixed_in(client):
    whole, other = got(client, "/", "br"), got(client, "/", "gzip")
    for had, status in (
        (whole.headers["ETag"], 206),
        (whole.headers["Last-Modified"], 206),
        (other.headers["ETag"], 200),
        (f"W/{whole.headers['ETag']}", 200),
        ("Sat, 01 Jan 2000 00:00:00 GMT", 200),
    ):
        assert got(client, "/", "br", Range="bytes=0-3", If_Range=had).status_code == status


def test_a_part_is_only_asked_for_with_get(client):
    assert got(client, "/", method="HEAD", Range="bytes=0-3").status_code == 200


def test_who_knows_the_whole_is_told_so_before_any_part_is_cut(client):
    tag = got(client, "/").headers["ETag"]
    assert got(client, "/", If_None_Match=tag, Range="bytes=0-3").status_code == 304


@pytest.mark.parametrize("method", ["POST", "PUT", "DELETE", "OPTIONS", "TRACE", "PATCH"])
def test_a_file_is_only_read(client, method):
    answer = got(client, "/", method=method)
    assert answer.status_code == 405
    assert answer.headers["Allow"] == "GET, HEAD"


def test_over_the_wire_it_is_all_the_same(app):
    with serving(app) as (server, _):
        port = server.effective_port
        whole, head = ask(port, "/", Accept_Encoding="br"), ask(port, "/", "HEAD", Accept_Encoding="br")
        same = ask(port, "/", Accept_Encoding="br", If_None_Match=whole.headers["etag"])
        part = ask(port, "/", Accept_Encoding="br", Range="bytes=0-0")
    differ = ("date",)
    assert {k: v for k, v in head.headers.items() if k not in differ} == {
        k: v for k, v in whole.headers.items() if k not in differ
    }
    assert (head.body, same.status, same.body) == (b"", 304, b"")
    assert (part.status, part.body) == (206, whole.body[:1])


def test_a_file_stays_what_it_was_when_the_folder_is_baked_anew_beside_a_running_server(client, instance):
    before = got(client, "/").get_data()
    index = instance / "site" / "index.html"
    was = index.read_bytes()
    index.write_bytes(b"half a fi")
    try:
        assert got(client, "/").get_data() == before
    finally:
        index.write_bytes(was)
