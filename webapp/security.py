"""The security headers that go out with every answer, and the WSGI wrapper that puts them there."""

from collections.abc import Callable, Iterable
from typing import Any

StartResponse = Callable[..., Callable[[bytes], object]]
Application = Callable[[dict[str, Any], StartResponse], Iterable[bytes]]

LARGEST_BODY = 6_000_000

POLICY: dict[str, str] = {
    "default-src": "'none'",
    "script-src": "'self'",
    "style-src": "'self'",
    "img-src": "'self' blob:",
    "font-src": "'self'",
    "connect-src": "'self'",
    "manifest-src": "'self'",
    "worker-src": "'self'",
    "base-uri": "'none'",
    "form-action": "'self'",
    "frame-ancestors": "'none'",
    "require-trusted-types-for": "'script'",
    "trusted-types": "script-address",
}

# A browser complains of these in a meta tag, where they have no effect.
ONLY_IN_A_HEADER = ("frame-ancestors",)

# A feature that some browser does not know makes it complain; the page may share without being named here.
ALLOWED_FEATURES = ("accelerometer", "gyroscope", "screen-wake-lock")
REFUSED_FEATURES = (
    "camera",
    "display-capture",
    "geolocation",
    "hid",
    "microphone",
    "midi",
    "payment",
    "serial",
    "usb",
)

ONE_YEAR = 365 * 24 * 60 * 60


def content_policy(*, meta: bool = False) -> str:
    """Return the content security policy, for the header or for the meta tag of a page on a static host."""
    rows = POLICY.items()
    return "; ".join(f"{name} {value}" for name, value in rows if not (meta and name in ONLY_IN_A_HEADER))


# What a document may do is asked of documents alone; on every script it would be 3 KiB of a first visit.
ONLY_ON_PAGES = ("Permissions-Policy",)
ONLY_OVER_TLS = ("Strict-Transport-Security",)


def security_headers(*, tls: bool = False) -> list[tuple[str, str]]:
    """Return the headers of every answer; the promise of TLS is only made where there is TLS."""
    features = [f"{name}=(self)" for name in ALLOWED_FEATURES] + [f"{name}=()" for name in REFUSED_FEATURES]
    headers = [
        ("Content-Security-Policy", content_policy()),
        ("X-Content-Type-Options", "nosniff"),
        # With no-referrer, Flask-WTF refuses every form over TLS.
        ("Referrer-Policy", "same-origin"),
        ("Cross-Origin-Opener-Policy", "same-origin"),
        ("Cross-Origin-Resource-Policy", "same-origin"),
        ("Permissions-Policy", ", ".join(features)),
    ]
    return [*headers, *((name, f"max-age={ONE_YEAR}") for name in ONLY_OVER_TLS if tls)]


def with_security_headers(application: Application, *, tls: bool = False) -> Application:
    """Wrap a whole WSGI application, so that files, pages and errors all go out with the headers."""
    ours = security_headers(tls=tls)
    names = {name.lower() for name, _ in ours}

    def wrapped(environ: dict[str, Any], start_response: StartResponse) -> Iterable[bytes]:
        def start(status: str, headers: list[tuple[str, str]], *rest: Any) -> Callable[[bytes], object]:
            kept = [(name, value) for name, value in headers if name.lower() not in names]
            added = [each for each in ours if each[0] not in ONLY_ON_PAGES or _is_page(headers)]
            return start_response(status, [*kept, *added], *rest)

        return application(environ, start)

    return wrapped


def _is_page(headers: list[tuple[str, str]]) -> bool:
    kind = next((value for name, value in headers if name.lower() == "content-type"), "")
    return kind.startswith("text/html")
