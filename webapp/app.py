"""The application factory: the baked site, the server's own pages, limits and headers around them."""

import secrets
from dataclasses import dataclass
from pathlib import Path
from urllib.parse import urlsplit

from flask import Flask
from flask_wtf.csrf import CSRFProtect

from webapp.baker.site import bake
from webapp.security import LARGEST_BODY, with_security_headers
from webapp.server import routes
from webapp.server.files import BakedFiles

LARGEST_FIELD = 100_000
MOST_FIELDS = 50


@dataclass(frozen=True)
class Settings:
    """Where the server keeps its files, and the address people reach it by, if it has one of its own."""

    instance: Path = Path("instance")
    address: str = ""

    @property
    def has_tls(self) -> bool:
        """Whether people reach it over TLS, which a proxy in front of it ends."""
        return self.address.startswith("https://")


def create_app(settings: Settings | None = None) -> Flask:
    """Bake the site and return the application that serves it."""
    settings = settings or Settings()
    instance = settings.instance.resolve()
    app = Flask("webapp", instance_path=str(instance), static_folder=None)
    app.config.from_mapping(_limits(), SECRET_KEY=secret_key(instance), **_cookies(settings))
    if settings.address:
        app.config["TRUSTED_HOSTS"] = [urlsplit(settings.address).hostname, "localhost", "127.0.0.1"]
    site = bake(instance / "site")
    routes.init_app(app, site)
    CSRFProtect(app)
    app.wsgi_app = with_security_headers(BakedFiles(app.wsgi_app, site), tls=settings.has_tls)  # type: ignore[method-assign,assignment]
    return app


def secret_key(instance: Path) -> str:
    """Return the key that signs sessions; it is drawn once and kept where only its owner reads it."""
    path = instance / "secret-key"
    instance.mkdir(mode=0o700, parents=True, exist_ok=True)
    if not path.exists():
        draft = instance / f".secret-key-{secrets.token_hex(4)}"
        draft.touch(mode=0o600, exist_ok=False)
        draft.write_text(secrets.token_hex(32))
        draft.rename(path)
    return path.read_text()


def _limits() -> dict[str, int]:
    return {
        "MAX_CONTENT_LENGTH": LARGEST_BODY,
        "MAX_FORM_MEMORY_SIZE": LARGEST_FIELD,
        "MAX_FORM_PARTS": MOST_FIELDS,
    }


def _cookies(settings: Settings) -> dict[str, object]:
    return {
        "SESSION_COOKIE_NAME": "__Host-sixteenth" if settings.has_tls else "sixteenth",
        "SESSION_COOKIE_HTTPONLY": True,
        "SESSION_COOKIE_SAMESITE": "Lax",
        "SESSION_COOKIE_SECURE": settings.has_tls,
    }
