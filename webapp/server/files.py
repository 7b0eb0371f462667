"""The baked files, read once at the start and answered by the book: RFC 9110 on conditions and parts."""

import os
from collections.abc import Mapping
from dataclasses import dataclass
from http import HTTPStatus
from io import BytesIO
from pathlib import Path
from typing import Any
from wsgiref.headers import Headers

from werkzeug.http import http_date, parse_accept_header, parse_date, parse_etags, parse_range_header
from whitenoise import WhiteNoise
from whitenoise.responders import Response

from webapp.baker.assets import CONTENT_TYPES
from webapp.baker.compress import SUFFIXES, fingerprint
from webapp.baker.writer import ASKED_ANEW, KEPT_FOR_GOOD, Site

ENCODINGS = dict(zip(SUFFIXES, ("br", "gzip"), strict=True))
# Each byte of a header counts some twenty times on a first visit.
TAG_LENGTH = 16
# What tells of a content stays away from an answer that carries none.
OF_CONTENT = ("Content-Type", "Content-Encoding")


@dataclass(frozen=True)
class Form:
    """One of the forms that a file is sent in: as it is, or a compressed twin; each has a tag of its own."""

    encoding: str
    content: bytes
    tag: str
    changed: str
    headers: tuple[tuple[str, str], ...]

    def answer(self, content: bytes, status: HTTPStatus = HTTPStatus.OK, **added: str) -> Response:
        """Return an answer with a content, the whole or a part."""
        length = ("Content-Length", str(len(content)))
        return Response(status, [*self.headers, *added.items(), length], BytesIO(content))

    def unchanged(self) -> Response:
        """Return the answer for one who has this form already."""
        kept = [each for each in self.headers if each[0] not in OF_CONTENT]
        return Response(HTTPStatus.NOT_MODIFIED, kept, None)

    def refused(self, status: HTTPStatus, **added: str) -> Response:
        """Return a refusal, which no cache keeps."""
        kept = [each for each in self.headers if each[0] in ("ETag", "Vary")]
        return Response(status, [*kept, *added.items(), ("Content-Length", "0")], None)


@dataclass(frozen=True)
class BakedFile:
    """A baked file in all its forms, the smaller first."""

    forms: tuple[Form, ...]

    def get_response(self, method: str, environ: Mapping[str, Any]) -> Response:
        """Answer a request: with the whole file, a part of it, or that it is still the same."""
        if method not in ("GET", "HEAD"):
            return Response(
                HTTPStatus.METHOD_NOT_ALLOWED, [("Allow", "GET, HEAD"), ("Content-Length", "0")], None
            )
        form = self._form_for(environ.get("HTTP_ACCEPT_ENCODING", ""))
        if not _is_as_asked(form, environ):
            return form.refused(HTTPStatus.PRECONDITION_FAILED)
        if _is_known(form, environ):
            return form.unchanged()
        if method == "HEAD":
            return Response(HTTPStatus.OK, form.answer(form.content).headers, None)
        return _part(form, environ) or form.answer(form.content)

    def _form_for(self, accepted: str) -> Form:
        taken = {name.lower() for name, quality in parse_accept_header(accepted) if quality > 0}
        return next(form for form in self.forms if not form.encoding or form.encoding in taken)


class BakedFiles(WhiteNoise):
    """Serves a baked site before an application: versioned files for good, the rest asked for anew."""

    def __init__(self, application: object, site: Site) -> None:
        self.baked = {*site.files}
        self.versioned = f"/v-{site.version}/"
        super().__init__(application, root=site.folder, index_file=True, max_age=None)

    def add_file_to_dictionary(
        self, url: str, path: str, stat_cache: Mapping[str, Any] | None = None
    ) -> None:
        """Take in what was baked; whatever else lies in the folder is nobody's."""
        if url.removeprefix("/") in self.baked:
            super().add_file_to_dictionary(url, path, stat_cache=stat_cache)

    def get_static_file(
        self, path: str, url: str, stat_cache: Mapping[str, os.stat_result] | None = None
    ) -> BakedFile:
        """Read a file and its twins."""
        content = Path(path).read_bytes()
        found = {encoding: Path(path + suffix) for suffix, encoding in ENCODINGS.items()}
        twins = {encoding: twin.read_bytes() for encoding, twin in found.items() if twin.is_file()}
        headers = Headers([])
        headers["Content-Type"] = CONTENT_TYPES[Path(path).suffix]
        is_versioned = url.startswith(self.versioned)
        headers["Cache-Control"] = KEPT_FOR_GOOD if is_versioned else ASKED_ANEW
        headers["Last-Modified"] = http_date(int(os.stat(path).st_mtime))
        if twins:
            headers["Vary"] = "Accept-Encoding"
        every = {**twins, "": content}
        return BakedFile(tuple(_form(encoding, each, content, headers) for encoding, each in every.items()))


def _form(encoding: str, content: bytes, original: bytes, headers: Headers) -> Form:
    tag = "-".join(filter(None, (fingerprint(original)[:TAG_LENGTH], encoding)))
    own = [("ETag", f'"{tag}"')] + ([("Content-Encoding", encoding)] if encoding else [])
    return Form(encoding, content, tag, headers["Last-Modified"] or "", (*headers.items(), *own))


def _is_as_asked(form: Form, environ: Mapping[str, Any]) -> bool:
    """Whether what the request makes its condition holds: this very form, or unchanged since a moment."""
    wanted = environ.get("HTTP_IF_MATCH")
    if wanted is not None:
        return parse_etags(wanted).contains(form.tag)
    since = parse_date(environ.get("HTTP_IF_UNMODIFIED_SINCE"))
    return since is None or _moment(form) <= since


def _is_known(form: Form, environ: Mapping[str, Any]) -> bool:
    """Whether the one who asks has this form already; a tag counts before a moment."""
    known = environ.get("HTTP_IF_NONE_MATCH")
    if known is not None:
        return parse_etags(known).contains_weak(form.tag)
    since = parse_date(environ.get("HTTP_IF_MODIFIED_SINCE"))
    return since is not None and _moment(form) <= since


def _part(form: Form, environ: Mapping[str, Any]) -> Response | None:
    """Return the part that is asked for, or None where the whole is sent: so it is of several parts."""
    asked = parse_range_header(environ.get("HTTP_RANGE"))
    own = f'"{form.tag}"'
    if asked is None or asked.units != "bytes" or len(asked.ranges) != 1:
        return None
    if environ.get("HTTP_IF_RANGE", own).strip() not in (own, form.changed):
        return None
    size = len(form.content)
    begin, end = asked.ranges[0]
    begin = max(0, size + begin) if begin < 0 else begin
    end = size if end is None else min(end, size)
    if begin >= size:
        held = {"Content-Range": f"bytes */{size}"}
        return form.refused(HTTPStatus.REQUESTED_RANGE_NOT_SATISFIABLE, **held)
    held = {"Content-Range": f"bytes {begin}-{end - 1}/{size}"}
    return form.answer(form.content[begin:end], HTTPStatus.PARTIAL_CONTENT, **held)


def _moment(form: Form) -> Any:
    return parse_date(form.changed)
