"""The server: files and pages, their caching, their limits, and headers on every answer."""

import http.client
import io
import json
import re
import stat
import threading
from contextlib import contextmanager

import pytest
from flask.testing import FlaskClient
from waitress import wasyncore

from webapp.app import Settings, create_app, secret_key
from webapp.job.demo import EXAMPLE_JOB
from webapp.security import security_headers
from webapp.server.listening import open_server

GUARDS = dict(security_headers())


@pytest.fixture(scope="module")
def instance(tmp_path_factory):
    return tmp_path_factory.mktemp("instance")


@pytest.fixture(scope="module")
def app(instance):
    return create_app(Settings(instance))


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


@contextmanager
def serving(app):
    """Serve in a thread of this process; on the way out the server closes in its own thread, and it ends."""
    server = open_server(app, "127.0.0.1", 0)
    thread = threading.Thread(target=server.run)
    thread.start()
    try:
        yield server, thread
    finally:
        server.task_dispatcher.shutdown()
        # A socket that another thread closes is still in the list that the loop has begun to wait for.
        server.trigger.pull_trigger(lambda: wasyncore.close_all(server._map))
        thread.join()


def guards_of(response):
    return {name: response.headers.get(name) for name in GUARDS}


def token(client):
    page = client.get("/plan").get_data(as_text=True)
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


def test_behind_tls_the_cookie_is_bound_to_it(tmp_path):
    client = ClosingClient(create_app(Settings(tmp_path, "https://sixteenth.example")))
    response = client.get("/plan", base_url="https://sixteenth.example")
    cookie = response.headers["Set-Cookie"]
    assert cookie.startswith("__Host-sixteenth=")
    assert "Secure" in cookie
    assert "max-age=31536000" in response.headers["Strict-Transport-Security"]


def test_with_an_address_of_its_own_another_hosts_name_is_refused(tmp_path):
    client = ClosingClient(create_app(Settings(tmp_path, "https://sixteenth.example")))
    response = client.get("/plan", base_url="https://elsewhere.example")
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


def fetch(port):
    """Ask for the phone page over the wire and read the answer to its end."""
    connection = http.client.HTTPConnection("127.0.0.1", port, timeout=10)
    connection.request("GET", "/", headers={"Accept-Encoding": "br"})
    response = connection.getresponse()
    response.read()
    connection.close()
    return response


def test_a_server_that_closes_ends_its_thread_without_an_error(app, monkeypatch):
    errors = []
    monkeypatch.setattr(threading, "excepthook", errors.append)
    for _ in range(20):
        with serving(app) as (server, thread):
            assert fetch(server.effective_port).status == 200
        assert not thread.is_alive()
    assert errors == []


def test_a_file_comes_over_the_wire_with_its_headers(port):
    response = fetch(port)
    assert response.status == 200
    assert {name: response.getheader(name) for name in GUARDS} == GUARDS
    assert response.getheader("Server") is None


@pytest.mark.parametrize(
    ("start", "status"),
    [
        (b"NONSENSE\r\n\r\n", 400),
        (b"GET / HTTP/1.1\r\nHost: here\r\nBroken header\r\n\r\n", 400),
        (b"POST /plan HTTP/1.1\r\nHost: here\r\nContent-Length: 99000000\r\n\r\n", 413),
    ],
    ids=["malformed", "broken header", "far too large"],
)
def test_what_never_reaches_the_application_is_answered_with_the_headers_too(port, start, status):
    connection = http.client.HTTPConnection("127.0.0.1", port, timeout=10)
    connection.connect()
    connection.sock.sendall(start)
    response = http.client.HTTPResponse(connection.sock)
    response.begin()
    response.read()
    response.close()
    connection.close()
    assert response.status == status
    assert {name: response.getheader(name) for name in GUARDS} == GUARDS
