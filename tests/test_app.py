"""The server: files and pages, their caching, their limits, and headers on every answer."""

import io
import json
import re
import stat
import threading

import pytest
from flask.testing import FlaskClient

from tests.wire import ask, ask_in_turn, ask_raw, serving
from webapp.app import Settings, create_app, secret_key
from webapp.job.demo import EXAMPLE_JOB
from webapp.security import security_headers

GUARDS = dict(security_headers())
ADDRESS = "https://sixteenth.example"


@pytest.fixture(scope="module")
def app(instance):
    return create_app(Settings(instance))


@pytest.fixture(scope="module")
def behind_tls(instance):
    return create_app(Settings(instance, ADDRESS))


@pytest.fixture
def client(app):
    return ClosingClient(app)


class ClosingClient(FlaskClient):
    """A client that reads an answer to its end, so that no file stays open on either side."""

    def open(self, *arguments, **details):
        response = super().open(*arguments, **{"buffered": True, **details})
        response.request.environ["wsgi.input"].close()
        return response


@pytest.fixture(scope="module")
def port(app):
    """The port of a real server, since the test client never meets waitress's own answers."""
    with serving(app) as (server, _):
        yield server.effective_port


def guards_of(response):
    return {name: response.headers.get(name) for name in GUARDS}


def token(client, address=None):
    page = client.get("/plan", base_url=address).get_data(as_text=True)
    return re.search(r'name="csrf_token"[^>]*value="([^"]+)"', page)[1]


def send(client, content, *, answer="text", name="job.json", **fields):
    data = {"csrf_token": token(client), "answer": answer, "job_file": (io.BytesIO(content), name), **fields}
    return client.post("/plan", data=data)


@pytest.mark.parametrize(
    ("method", "path", "status"),
    [
        ("get", "/", 200),
        ("get", "/service-worker.js", 200),
        ("get", "/manifest.webmanifest", 200),
        ("get", "/icons/mark-192.png", 200),
        ("get", "/plan", 200),
        ("get", "/nowhere", 404),
        ("get", "/v-000000000000/app.js", 404),
        ("post", "/", 405),
        ("put", "/plan", 405),
        ("post", "/plan", 400),
    ],
)
def test_every_answer_carries_the_security_headers(client, method, path, status):
    response = getattr(client, method)(path)
    assert response.status_code == status
    # What a document may do is asked of documents alone.
    apart = set() if response.mimetype == "text/html" else {"Permissions-Policy"}
    assert guards_of(response) == GUARDS | dict.fromkeys(apart)


def test_a_versioned_file_is_kept_for_good_and_the_rest_is_asked_for_anew(client, instance):
    styles = next((instance / "site").glob("v-*")).name + "/sixteenth.css"
    assert client.get(f"/{styles}").headers["Cache-Control"] == "public, max-age=31536000, immutable"
    for path in ("/", "/service-worker.js", "/manifest.webmanifest", "/icons/mark.svg"):
        assert client.get(path).headers["Cache-Control"] == "no-cache"


def test_an_unchanged_file_is_not_sent_again(client):
    tag = client.get("/service-worker.js").headers["ETag"]
    assert client.get("/service-worker.js", headers={"If-None-Match": tag}).status_code == 304


@pytest.mark.parametrize("encoding", ["br", "gzip"])
def test_a_compressed_twin_is_sent_to_those_who_take_it(client, encoding):
    response = client.get("/", headers={"Accept-Encoding": encoding})
    assert response.headers["Content-Encoding"] == encoding
    assert "Accept-Encoding" in response.headers["Vary"]


@pytest.mark.parametrize(
    ("path", "kind"),
    [
        ("/", "text/html; charset=utf-8"),
        ("/service-worker.js", "text/javascript; charset=utf-8"),
        ("/manifest.webmanifest", "application/manifest+json"),
        ("/icons/mark.svg", "image/svg+xml"),
    ],
)
def test_files_say_what_they_are(client, path, kind):
    assert client.get(path).headers["Content-Type"].replace('"', "") == kind


def test_a_page_that_is_not_there_says_so_and_leads_back(client):
    page = client.get("/nowhere").get_data(as_text=True)
    assert "There is no such page here." in page
    assert 'href="/"' in page


def test_the_phone_page_sets_no_cookie(client):
    assert "Set-Cookie" not in client.get("/").headers


def test_a_server_page_is_kept_nowhere_and_its_cookie_is_out_of_reach_of_scripts(client):
    response = client.get("/plan")
    assert response.headers["Cache-Control"] == "no-store"
    cookie = response.headers["Set-Cookie"]
    assert "HttpOnly" in cookie
    assert "SameSite=Lax" in cookie
    assert "Secure" not in cookie


def test_behind_tls_the_cookie_is_bound_to_it(behind_tls):
    response = ClosingClient(behind_tls).get("/plan", base_url=ADDRESS)
    cookie = response.headers["Set-Cookie"]
    assert cookie.startswith("__Host-sixteenth=")
    assert "Secure" in cookie
    assert "max-age=31536000" in response.headers["Strict-Transport-Security"]


def test_with_an_address_of_its_own_another_hosts_name_is_refused(behind_tls):
    response = ClosingClient(behind_tls).get("/plan", base_url="https://elsewhere.example")
    assert response.status_code == 400
    assert response.headers["Content-Security-Policy"] == GUARDS["Content-Security-Policy"]


def test_the_key_is_drawn_once_and_only_its_owner_reads_it(tmp_path):
    key = secret_key(tmp_path)
    assert len(key) == 64
    assert secret_key(tmp_path) == key
    assert stat.S_IMODE((tmp_path / "secret-key").stat().st_mode) == 0o600


def test_a_job_file_comes_back_as_a_job_sheet(client):
    page = send(client, json.dumps(EXAMPLE_JOB).encode()).get_data(as_text=True)
    assert "<pre" in page
    assert EXAMPLE_JOB["colours"][0]["name"] in page


def test_a_job_file_comes_back_as_figures(client):
    response = send(client, json.dumps(EXAMPLE_JOB).encode(), answer="json")
    assert response.mimetype == "application/json"
    tree = json.loads(response.get_data())
    assert tree["colours"][0]["cells"]["total_face_volume"]["unit"] == "cm3"


@pytest.mark.parametrize(
    ("content", "says"),
    [
        (b"not json", "it is not JSON"),
        (b"\xff\xfe\x00", "it is not JSON"),
        (b"[1, 2]", "This is no job file"),
        (b'{"format": "sixteenth-job", "version": 99}', "Update the app"),
        (b'{"format": "sixteenth-job", "version": 1, "tax": 1}', "is not known here"),
        (b" " * 5_000_001, "larger than 5 MB"),
        (b"[" * 100_000, "This is no job file"),
    ],
    ids=["no JSON", "no text", "no job", "too new", "foreign key", "too big", "too deep"],
)
def test_a_bad_file_gets_a_sentence_beside_the_field(client, content, says):
    response = send(client, content)
    assert response.status_code == 200
    assert re.search(rf'role="alert">[^<]*{re.escape(says)}', response.get_data(as_text=True))


def test_markup_in_a_name_stays_text(client):
    job = {**EXAMPLE_JOB, "name": "<script>alert(1)</script>"}
    page = send(client, json.dumps(job).encode()).get_data(as_text=True)
    assert "<script>alert" not in page
    assert "&lt;script&gt;" in page


@pytest.mark.parametrize("answer", ["text", "json"])
@pytest.mark.parametrize("where", ["name", "tax \ud83d"])
def test_half_a_character_is_no_error_of_the_server(client, answer, where):
    content = json.dumps({**EXAMPLE_JOB, where: "half \ud83d and \x1b[2J"}).encode()
    response = send(client, content, answer=answer)
    assert response.status_code == 200
    assert "\x1b" not in response.get_data(as_text=True)


def test_without_a_file_the_field_says_what_to_choose(client):
    page = client.post("/plan", data={"csrf_token": token(client), "answer": "text"}).get_data(as_text=True)
    assert "Choose a job file" in page


def test_without_its_token_a_form_is_refused_in_plain_words(client):
    response = client.post("/plan", data={"answer": "text"})
    assert response.status_code == 400
    assert "Choose the file again" in response.get_data(as_text=True)


def test_a_body_past_the_limit_is_refused_in_plain_words(client):
    response = client.post("/plan", data={"job_file": (io.BytesIO(b" " * 6_500_000), "job.json")})
    assert response.status_code == 413
    assert guards_of(response) == GUARDS
    assert "larger than 5 MB" in response.get_data(as_text=True)


def test_a_server_that_closes_ends_its_thread_without_an_error(app, monkeypatch):
    errors = []
    monkeypatch.setattr(threading, "excepthook", errors.append)
    for _ in range(20):
        with serving(app) as (server, thread):
            assert ask(server.effective_port, "/").status == 200
        assert not thread.is_alive()
    assert errors == []


def guards_over_the_wire(answer):
    return {name: answer.headers.get(name.lower()) for name in GUARDS}


def test_a_file_comes_over_the_wire_with_its_headers(port):
    answer = ask(port, "/", Accept_Encoding="br")
    assert answer.status == 200
    assert guards_over_the_wire(answer) == GUARDS
    assert "server" not in answer.headers


@pytest.mark.parametrize(
    ("pieces", "status"),
    [
        ([b"NONSENSE\r\n\r\n"], 400),
        ([b"get / HTTP/1.1\r\n\r\n"], 400),
        ([b"GET / HTTP/1.1\r\nHost: here\r\nBroken header\r\n\r\n"], 400),
        ([b"GET http://[ HTTP/1.1\r\nHost: here\r\n\r\n"], 400),
        ([b"GET / HTTP/1.1\r\nHost: here\r\nContent-Length: some\r\n\r\n"], 400),
        ([b"GET / HTTP/1.1\r\nHost: here\r\n", b"Long: " + b"x" * 70_000 + b"\r\n\r\n"], 431),
        ([b"POST /plan HTTP/1.1\r\nHost: here\r\nContent-Length: 99000000\r\n\r\n"], 413),
        ([b"POST /plan HTTP/1.1\r\nHost: here\r\nTransfer-Encoding: chunked\r\n\r\n", b"zz\r\n\r\n"], 400),
        ([b"POST /plan HTTP/1.1\r\nHost: here\r\nTransfer-Encoding: gzip\r\n\r\n"], 501),
    ],
    ids=[
        "no request",
        "small letters",
        "broken header",
        "broken address",
        "length that is none",
        "headers far too large",
        "body far too large",
        "broken chunk",
        "coding of nobody's",
    ],
)
def test_what_never_reaches_the_application_is_answered_with_the_headers_too(port, pieces, status):
    answer = ask_raw(port, *pieces)
    assert answer.status == status
    assert guards_over_the_wire(answer) == GUARDS
    assert "strict-transport-security" not in answer.headers


def test_behind_tls_an_answer_that_never_reaches_the_application_promises_it_too(app):
    with serving(app, tls=True) as (server, _):
        answer = ask_raw(server.effective_port, b"NONSENSE\r\n\r\n")
    assert answer.headers["strict-transport-security"] == "max-age=31536000"


@pytest.mark.parametrize(
    "referer", ["http://[", "//[", f"{ADDRESS}:99999/plan", f"{ADDRESS}:abc/", "https://[v1.x]/"]
)
def test_a_referer_that_is_no_address_is_refused_in_plain_words(behind_tls, referer):
    client = ClosingClient(behind_tls)
    data = {
        "csrf_token": token(client, ADDRESS),
        "answer": "text",
        "job_file": (io.BytesIO(b"{}"), "job.json"),
    }
    response = client.post("/plan", data=data, base_url=ADDRESS, headers={"Referer": referer})
    assert response.status_code == 400
    assert 'role="alert"' in response.get_data(as_text=True) or "Go back" in response.get_data(as_text=True)


@pytest.mark.parametrize("host", ["[", "[::1", "a b", "\xff", "here:99999", "here:abc", ""])
def test_a_host_that_is_none_is_no_error_of_the_server(port, behind_tls, host):
    with serving(behind_tls, tls=True) as (server, _):
        for each in (port, server.effective_port):
            for path in ("/", "/plan", "/nowhere"):
                request = f"GET {path} HTTP/1.1\r\nHost: {host}\r\n\r\n".encode("latin-1")
                assert ask_raw(each, request).status < 500


def test_a_part_of_a_form_without_a_name_is_refused_in_plain_words(client):
    body = b"--cut\r\nContent-Disposition: form-data\r\n\r\ntext\r\n--cut--\r\n"
    response = client.post("/plan", data=body, content_type="multipart/form-data; boundary=cut")
    assert response.status_code == 400
    assert "Go back and try again" in response.get_data(as_text=True)


@pytest.mark.parametrize("path", ["/.baked.json", "/%2ebaked.json", "/index.html.br", "/index.html.gz"])
def test_what_the_bake_keeps_for_itself_is_not_served(client, path):
    assert client.get(path).status_code == 404


@pytest.mark.parametrize("path", ["/plan", "/nowhere", "/index.html"])
def test_of_the_servers_own_pages_a_head_tells_what_a_get_would_send(client, path):
    client.get("/plan")
    got, head = client.get(path), client.head(path)
    apart = {"Set-Cookie"}
    assert {k: v for k, v in head.headers if k not in apart} == {
        k: v for k, v in got.headers if k not in apart
    }
    assert (head.status_code, head.get_data()) == (got.status_code, b"")


def test_one_connection_serves_a_phone_that_asks_whether_anything_is_new(port):
    tag = ask(port, "/").headers["etag"]
    asked = f"GET / HTTP/1.1\r\nHost: here\r\nIf-None-Match: {tag}\r\n\r\n".encode()
    assert [answer.status for answer in ask_in_turn(port, asked, asked, asked)] == [304, 304, 304]
