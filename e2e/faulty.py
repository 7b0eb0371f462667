"""A host that fails from one request on, as a poor signal or a sign-in page does, until it is mended."""

import http.server
import math
import socket
import threading
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

FAULTS = ("cut", "silent", "half sent", "signed out")
# Beside these a file may be torn, with nobody told that it had been longer, or altered at its full length.
SIGN_IN = b"<!doctype html><title>Guest network</title><form><button>Sign in</button></form>"
LONGEST_SILENCE = 120


class FaultyHost(http.server.ThreadingHTTPServer):
    """A static host of a baked folder, which keeps what it was asked for.

    It fails from its request number `first` on, or where a path ends in `only`; `times` times, or always.
    """

    daemon_threads = True
    block_on_close = False

    def __init__(self, folder: Path, fault: str, first: int, only: str, times: float) -> None:
        super().__init__(("127.0.0.1", 0), _Handler)
        self.folder = folder
        self.fault = fault
        self.first = first
        self.only = only
        self.times = times
        self.asked: list[str] = []
        self.mended = threading.Event()
        self._lock = threading.Lock()

    @property
    def address(self) -> str:
        """The address of the page."""
        return f"http://127.0.0.1:{self.server_port}/"

    def fault_of(self, path: str) -> str:
        """Count a request, and say how it fails, or ""."""
        with self._lock:
            self.asked.append(path)
            is_meant = path.endswith(self.only) if self.only else len(self.asked) >= self.first
            if not is_meant or self.mended.is_set() or self.times <= 0:
                return ""
            self.times -= 1
        return self.fault

    def handle_error(self, request: object, client_address: object) -> None:
        """Let a browser hang up without a trace in the test's output."""


class _Handler(http.server.SimpleHTTPRequestHandler):
    server: FaultyHost
    is_another_page = False

    def translate_path(self, path: str) -> str:
        """Return the file of a path, in the host's folder."""
        self.directory = str(self.server.folder)
        return super().translate_path(path)

    def end_headers(self) -> None:
        """Send the cache rules of the app's own server; a sign-in page has none of them."""
        is_versioned = self.path.startswith("/v-") and not self.is_another_page
        self.send_header(
            "Cache-Control", "public, max-age=31536000, immutable" if is_versioned else "no-cache"
        )
        super().end_headers()

    def do_GET(self) -> None:
        """Answer, or fail."""
        fault = self.server.fault_of(self.path)
        if fault == "silent":
            self.server.mended.wait(LONGEST_SILENCE)
        if fault in ("cut", "silent"):
            self.connection.shutdown(socket.SHUT_RDWR)
        elif fault == "signed out":
            self.is_another_page = True
            self._send(SIGN_IN, "text/html")
        elif fault:
            self._send_harmed(fault)
        else:
            super().do_GET()

    def _send_harmed(self, fault: str) -> None:
        path = Path(self.translate_path(self.path))
        path = path / "index.html" if path.is_dir() else path
        content = path.read_bytes()
        half = content[: len(content) // 2]
        if fault == "altered":
            self._send(
                half + half[: len(content) - len(half)].swapcase(), self.guess_type(path), len(content)
            )
        else:
            self._send(half, self.guess_type(path), len(content) if fault == "half sent" else None)

    def _send(self, content: bytes, kind: str, length: int | None = None) -> None:
        self.send_response(200)
        self.send_header("Content-Type", kind)
        if length is not None:
            self.send_header("Content-Length", str(length))
        self.end_headers()
        self.wfile.write(content)

    def log_message(self, *_arguments: object) -> None:
        """Keep the test's output to the test."""


@contextmanager
def faulty_host(
    folder: Path, fault: str, first: int = 1, only: str = "", times: float = math.inf
) -> Iterator[FaultyHost]:
    """Serve a folder, and fail from one request on, or only where a path ends so, so often or always."""
    host = FaultyHost(folder, fault, first, only, times)
    thread = threading.Thread(target=host.serve_forever, daemon=True)
    thread.start()
    try:
        yield host
    finally:
        host.mended.set()
        host.shutdown()
        host.server_close()
        thread.join()
