"""The page at a desk: whatever bytes it is sent, it answers with a page or a refusal."""

import gc
import json
import logging
import re
import warnings

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from tests.running import drawn
from tests.test_app import ADDRESS, GUARDS, ClosingClient
from webapp.app import Settings, create_app
from webapp.job.demo import EXAMPLE_JOB

GOOD = json.dumps(EXAMPLE_JOB).encode()
PIECES = st.sampled_from(
    [
        *(b"\r\n", b"\r\n\r\n", b"--cut", b"--cut--", b"\n", b"\x00", b"\xff", b'"', b";"),
        *(b"; filename*=utf-8''%ff", b'; name*0="a"', b"=?utf-8?b?", b'; name=""', b'; filename=""'),
        *(b"Content-Type: text/plain; charset=utf-7\r\n", b"Content-Transfer-Encoding: base64\r\n"),
        *(b"1e999", b"NaN", b"1" * 400, b"1" * 5000, b"[" * 3000, b'"\\ud800"', b"null", b"\xef\xbb\xbf"),
    ]
)
ADDRESSES = st.sampled_from(
    ["http://[", "//[", f"{ADDRESS}:99999/", f"{ADDRESS}:x/", "", "\xff", ADDRESS, f"{ADDRESS}/plan", "a b"]
)
HEADERS = st.fixed_dictionaries(
    {"Referer": ADDRESSES},
    optional={
        "Origin": ADDRESSES,
        "X-Forwarded-For": ADDRESSES,
        "Accept-Encoding": st.sampled_from(["*", "br;q=x", ";;", "gzip;q=9"]),
        "Range": st.sampled_from(["bytes=0-0", "bytes=--1", "bytes=" + "9" * 5000]),
        "If-None-Match": st.sampled_from(["*", '"', "W/"]),
        "X-CSRFToken": st.sampled_from(["", ".", "a.b.c", "\xff"]),
    },
)
# A server hands each byte of an address on as one letter.
LATIN = st.text(st.characters(max_codepoint=255), max_size=20)
TYPES = st.sampled_from(
    [
        *["multipart/form-data; boundary=cut"] * 6,
        *("multipart/form-data", 'multipart/form-data; boundary="', "multipart/form-data; boundary=\xff"),
        *(
            "application/x-www-form-urlencoded",
            "application/json",
            "",
            "\xff/;;=",
            "text/html; charset=nobody",
        ),
    ]
)


@pytest.fixture(scope="module", params=["", ADDRESS], ids=["plain", "behind TLS"])
def client(request, instance):
    client = ClosingClient(create_app(Settings(instance, request.param)))
    client.address = request.param or "http://localhost"
    page = client.get("/plan", base_url=client.address).get_data(as_text=True)
    client.token = re.search(r'name="csrf_token"[^>]*value="([^"]+)"', page)[1].encode()
    return client


@pytest.fixture(autouse=True)
def quiet():
    logging.disable(logging.CRITICAL)
    with warnings.catch_warnings():
        # What the form reader leaves open after a body that is no form, Python closes.
        warnings.simplefilter("ignore", ResourceWarning)
        yield
        gc.collect()
    logging.disable(logging.NOTSET)


def form(token, content, answer=b"text"):
    part = b'--cut\r\nContent-Disposition: form-data; name="%b"%b\r\n\r\n%b\r\n'
    fields = [
        (b"csrf_token", b"", token),
        (b"answer", b"", answer),
        (b"job_file", b'; filename="job.json"', content),
    ]
    return b"".join(part % each for each in fields) + b"--cut--\r\n"


@settings(
    max_examples=drawn(1200), deadline=None, suppress_health_check=[HealthCheck.function_scoped_fixture]
)
@given(data=st.data())
def test_whatever_is_sent_to_the_plan_page_is_answered_or_refused(client, data):
    content = data.draw(st.sampled_from([b"{}", b'{"format": "sixteenth-job"}', GOOD]))
    body = bytearray(form(client.token, content, data.draw(st.sampled_from([b"text", b"json", b"song"]))))
    for _ in range(data.draw(st.integers(0, 4))):
        at = data.draw(st.integers(0, min(len(body), 700)))
        body[at : at + data.draw(st.integers(0, 20))] = data.draw(PIECES | st.binary(max_size=8))
    response = client.post(
        "/plan",
        base_url=client.address,
        data=bytes(body),
        content_type=data.draw(TYPES),
        headers=data.draw(HEADERS),
    )
    assert response.status_code in (200, 400, 413)
    assert response.headers["Content-Security-Policy"] == GUARDS["Content-Security-Policy"]
    if response.mimetype == "application/json":
        json.loads(response.get_data(), parse_constant=pytest.fail)


@settings(max_examples=drawn(1000), deadline=None)
@given(
    method=st.sampled_from(["GET", "HEAD", "POST", "PUT", "DELETE", "OPTIONS", "TRACE", "PATCH", "NONE"]),
    path=st.sampled_from(["/plan", "/", "/plan/", "//plan", "", "/%", "/v-x/../plan", "/nowhere"]) | LATIN,
    query=LATIN,
    headers=HEADERS,
)
def test_whatever_address_is_asked_for_is_answered_or_refused(client, method, path, query, headers):
    asked = {"PATH_INFO": path, "QUERY_STRING": query}
    response = client.open(method=method, base_url=client.address, headers=headers, environ_overrides=asked)
    assert response.status_code < 500
    assert response.headers["Content-Security-Policy"] == GUARDS["Content-Security-Policy"]
