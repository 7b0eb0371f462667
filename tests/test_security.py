"""The headers: on files, pages and errors alike, and on answers that never reach the application."""

import pytest

from webapp.security import content_policy, security_headers, with_security_headers


def answer(application, **environ):
    seen = {}

    def start(status, headers, *_rest):
        seen["status"], seen["headers"] = status, headers
        return lambda _: None

    body = b"".join(application({"PATH_INFO": "/", **environ}, start))
    return seen["status"], seen["headers"], body


def test_an_answer_keeps_its_own_headers_and_gets_ours():
    def application(_environ, start_response):
        start_response("200 OK", [("Content-Type", "text/plain"), ("content-security-policy", "weaker")])
        return [b"hello"]

    status, headers, body = answer(with_security_headers(application))
    assert (status, body) == ("200 OK", b"hello")
    assert ("Content-Type", "text/plain") in headers
    policies = [value for name, value in headers if name.lower() == "content-security-policy"]
    assert policies == [content_policy()]


def test_the_policy_lets_in_nothing_from_elsewhere_and_nothing_inline():
    policy = dict(part.split(" ", 1) for part in content_policy().split("; "))
    assert policy["default-src"] == "'none'"
    assert policy["script-src"] == policy["style-src"] == policy["connect-src"] == "'self'"
    assert policy["require-trusted-types-for"] == "'script'"
    assert "unsafe" not in content_policy()
    assert "http" not in content_policy()


def test_the_meta_tag_leaves_out_what_only_a_header_can_say():
    assert "frame-ancestors" in content_policy()
    assert "frame-ancestors" not in content_policy(meta=True)


@pytest.mark.parametrize(("tls", "promised"), [(False, 0), (True, 1)])
def test_tls_is_promised_only_where_there_is_tls(tls, promised):
    names = [name for name, _ in security_headers(tls=tls)]
    assert names.count("Strict-Transport-Security") == promised


def test_the_referrer_policy_is_one_that_forms_over_tls_work_with():
    assert dict(security_headers())["Referrer-Policy"] == "same-origin"
