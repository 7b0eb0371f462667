"""The real server in a process of its own, so that a test can end it; and a plain static host."""

import functools
import http.server
import re
import shutil
import subprocess
import sys
import threading
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

ROOT = Path(__file__).parent.parent


class Server:
    """A server of a checkout; it can be stopped, and started again on the same port."""

    def __init__(self, instance: Path, checkout: Path = ROOT) -> None:
        self.instance = instance
        self.checkout = checkout
        self.port = 0
        self.process: subprocess.Popen[str] | None = None

    def start(self) -> "Server":
        """Bake and serve; wait until the address is printed."""
        command = [sys.executable, "-m", "webapp", "--port", str(self.port), "--instance", str(self.instance)]
        self.process = subprocess.Popen(command, cwd=self.checkout, stdout=subprocess.PIPE, text=True)
        assert self.process.stdout
        said = self.process.stdout.readline()
        found = re.search(r":(\d+)/", said)
        if not found:
            self.stop()
            raise RuntimeError(f"the server did not start: {said!r}")
        self.port = int(found[1])
        return self

    @property
    def address(self) -> str:
        """The address of the page."""
        return f"http://127.0.0.1:{self.port}/"

    def stop(self) -> None:
        """End the process, as a power cut would."""
        if self.process:
            self.process.kill()
            self.process.wait()
            if self.process.stdout:
                self.process.stdout.close()
            self.process = None


class _StaticHandler(http.server.SimpleHTTPRequestHandler):
    def log_message(self, *_arguments: object) -> None:
        """Keep the test's output to the test."""


@contextmanager
def static_host(folder: Path) -> Iterator[str]:
    """Serve a folder as any static host does, without a header of ours; yield its address."""
    handler = functools.partial(_StaticHandler, directory=str(folder))
    host = http.server.ThreadingHTTPServer(("127.0.0.1", 0), handler)
    thread = threading.Thread(target=host.serve_forever, daemon=True)
    thread.start()
    try:
        yield f"http://127.0.0.1:{host.server_port}/"
    finally:
        host.shutdown()
        host.server_close()
        thread.join()


def changed_checkout(folder: Path, marker: str) -> Path:
    """Copy what the server needs, with a marker in the entry module, so that it bakes another version."""
    for name in ("webapp", "static"):
        shutil.copytree(ROOT / name, folder / name, ignore=shutil.ignore_patterns("__pycache__"))
    entry = folder / "static" / "app.js"
    entry.write_text(f'{entry.read_text()}\ndocument.documentElement.dataset.version = "{marker}";\n')
    return folder
