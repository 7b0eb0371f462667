"""Debian's nginx with the configuration that the bake writes, on loopback, for one folder."""

import fcntl
import os
import shutil
import socket
import subprocess
import time
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

from webapp.baker.nginx import nginx_configuration

PACKAGES = ("nginx", "libnginx-mod-http-brotli-static", "openssl")
BROTLI = Path("/usr/lib/nginx/modules/ngx_http_brotli_static_module.so")
STARTS_WITHIN = 20

# What Debian's own nginx.conf does around the files that it takes in, with every path of its own.
AROUND = """load_module {brotli};
daemon off;
pid {place}/nginx.pid;
error_log {place}/nginx-errors.log;
worker_processes 1;
{user}events {{ worker_connections 1024; }}
http {{
    access_log off;
    sendfile on;
    tcp_nopush on;
    client_body_temp_path {place}/body;
    proxy_temp_path {place}/proxy;
    fastcgi_temp_path {place}/fastcgi;
    uwsgi_temp_path {place}/uwsgi;
    scgi_temp_path {place}/scgi;
    include {written};
}}
"""


def executable() -> str:
    """Return nginx, installed with its brotli module from Debian where either is missing."""
    folder = os.open(Path(__file__).parent, os.O_RDONLY)
    try:
        # Tests on two workers would stand in each other's way.
        fcntl.flock(folder, fcntl.LOCK_EX)
        if not (_found() and BROTLI.exists() and shutil.which("openssl")):
            as_root = [] if os.geteuid() == 0 else ["sudo", "-n"]
            for command in (["apt-get", "update", "-q"], ["apt-get", "install", "-y", "-q", *PACKAGES]):
                subprocess.run([*as_root, *command], check=True, stdout=subprocess.DEVNULL)
    finally:
        os.close(folder)
    return _found() or "nginx"


def _found() -> str | None:
    return shutil.which("nginx") or shutil.which("nginx", path="/usr/sbin")


def free_port() -> int:
    """Return a port of loopback that nobody listens on."""
    with socket.create_server(("127.0.0.1", 0)) as free:
        return int(free.getsockname()[1])


@contextmanager
def nginx_serving(site: Path, place: Path, path: str = "/") -> Iterator[tuple[int, int]]:
    """Serve a baked folder at a path with nginx; yield its port and the process that answers."""
    port = free_port()
    written = place / "site.conf"
    written.write_text(nginx_configuration(site, f"http://127.0.0.1:{port}{path}"))
    with nginx_with(written, place, port) as process:
        yield port, process


@contextmanager
def nginx_with(written: Path, place: Path, port: int) -> Iterator[int]:
    """Run nginx with exactly one written file; yield the process that answers."""
    user = "user root;\n" if os.geteuid() == 0 else ""
    around = place / "nginx.conf"
    around.write_text(AROUND.format(brotli=BROTLI, place=place, written=written, user=user))
    command = [executable(), "-c", str(around), "-p", str(place), "-e", str(place / "nginx-errors.log")]
    process = subprocess.Popen(command)
    try:
        _wait_for(port, process)
        children = Path(f"/proc/{process.pid}/task/{process.pid}/children").read_text().split()
        yield int(children[0])
    finally:
        process.terminate()
        process.wait()


def _wait_for(port: int, process: subprocess.Popen[bytes]) -> None:
    until = time.monotonic() + STARTS_WITHIN
    while time.monotonic() < until and process.poll() is None:
        try:
            socket.create_connection(("127.0.0.1", port), timeout=1).close()
            return
        except OSError:
            time.sleep(0.02)
    raise RuntimeError("nginx did not start: see nginx-errors.log")
