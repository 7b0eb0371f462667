"""The server under a crowd, beside nginx with the baked folder: `python -m e2e.crowd` prints the table.

Many connections ask for the versioned files again and again, others stand idle. Seconds tell of the machine
as well; what was not answered does not.
"""

import argparse
import asyncio
import multiprocessing
import os
import tempfile
import time
from collections.abc import Coroutine, Iterator
from concurrent.futures import ThreadPoolExecutor
from contextlib import contextmanager
from dataclasses import dataclass, field
from multiprocessing.connection import Connection
from pathlib import Path
from typing import Any, TypeVar

from e2e.nginx import nginx_serving
from webapp.app import Settings, create_app
from webapp.baker.site import bake
from webapp.server.listening import THREADS, open_server

T = TypeVar("T")

TICKS = os.sysconf("SC_CLK_TCK")
# Idle and busy connections.
CROWDS = ((0, 1), (0, 16), (0, 64), (105, 16), (192, 64), (0, 256))
ANSWERS = 4000
PATIENCE = 30
HEADERS = "Host: 127.0.0.1\r\nAccept-Encoding: gzip, deflate, br\r\n\r\n"


@dataclass(frozen=True)
class Host:
    """A server of the baked site: its port, and the process whose time counts."""

    name: str
    port: int
    process: int
    paths: tuple[str, ...]


@dataclass(frozen=True)
class Outcome:
    """What came of a crowd: counts, and times in seconds."""

    asked: int
    answered: int
    refused: int
    cut: int
    seconds: float
    processor: float
    slowest: float


@contextmanager
def own_server(folder: Path, threads: int = THREADS) -> Iterator[Host]:
    """Run the app's own server in a process of its own."""
    context = multiprocessing.get_context("spawn")
    ours, theirs = context.Pipe()
    process = context.Process(target=_serve, args=(folder, threads, theirs), daemon=True)
    process.start()
    try:
        yield Host(f"own, {threads} threads", ours.recv(), process.pid or 0, versioned(folder / "site"))
    finally:
        process.kill()
        process.join()


def _serve(folder: Path, threads: int, told: Connection) -> None:
    server = open_server(create_app(Settings(folder)), "127.0.0.1", 0, threads=threads)
    told.send(server.effective_port)
    server.run()


@contextmanager
def nginx_host(folder: Path) -> Iterator[Host]:
    """Run nginx with the baked folder, as README says."""
    bake(folder / "site")
    with nginx_serving(folder / "site", folder) as (port, process):
        yield Host("nginx", port, process, versioned(folder / "site"))


def versioned(site: Path) -> tuple[str, ...]:
    """Return the addresses of the versioned scripts of a baked site."""
    return tuple(f"/{path.relative_to(site).as_posix()}" for path in sorted(site.glob("v-*/**/*.js")))


def crowd(host: Host, idle: int, busy: int, answers: int = ANSWERS) -> Outcome:
    """Let a crowd loose on a server."""
    return apart(_crowd(host, idle, busy, answers))


def apart(talk: Coroutine[Any, Any, T]) -> T:
    """Run what talks to a server on a thread of its own: where browser tests run, a loop runs already."""
    with ThreadPoolExecutor(1) as thread:
        return thread.submit(asyncio.run, talk).result()


async def _crowd(host: Host, idle: int, busy: int, answers: int) -> Outcome:
    standing = [await asyncio.open_connection("127.0.0.1", host.port) for _ in range(idle)]
    begun, worked = time.perf_counter(), processor_time(host.process)
    turns = max(1, answers // busy)
    visitors = [Visitor(host, n) for n in range(busy)]
    await asyncio.gather(*(visitor.ask(turns) for visitor in visitors))
    seconds, worked = time.perf_counter() - begun, processor_time(host.process) - worked
    for _, writer in standing:
        writer.close()
    times = [each for visitor in visitors for each in visitor.times]
    refused, cut = sum(each.refused for each in visitors), sum(each.cut for each in visitors)
    return Outcome(turns * busy, len(times), refused, cut, seconds, worked, max(times, default=0.0))


@dataclass
class Visitor:
    """One who asks for one file after another over a connection that is kept, as a browser does."""

    host: Host
    first: int
    times: list[float] = field(default_factory=list)
    refused: int = 0
    cut: int = 0

    async def ask(self, count: int) -> None:
        """Ask so many times, or until the connection is cut."""
        turn = 0
        try:
            while turn < count:
                reader, writer = await asyncio.open_connection("127.0.0.1", self.host.port)
                try:
                    is_open = True
                    while is_open and turn < count:
                        is_open = await self._ask_once(reader, writer, turn)
                        turn += 1
                finally:
                    writer.close()
        except (OSError, EOFError, TimeoutError):
            self.cut += 1

    async def _ask_once(self, reader: asyncio.StreamReader, writer: asyncio.StreamWriter, turn: int) -> bool:
        """Ask for one file; return whether the connection stays open."""
        path = self.host.paths[(self.first + turn) % len(self.host.paths)]
        begun = time.perf_counter()
        writer.write(f"GET {path} HTTP/1.1\r\n{HEADERS}".encode())
        async with asyncio.timeout(PATIENCE):
            head = (await reader.readuntil(b"\r\n\r\n")).lower()
            await reader.readexactly(int(head.partition(b"content-length:")[2].partition(b"\r\n")[0]))
        if head.startswith(b"http/1.1 200"):
            self.times.append(time.perf_counter() - begun)
        else:
            self.refused += 1
        return b"connection: close" not in head


def processor_time(process: int) -> float:
    """Return the seconds of processor that a process has used."""
    own = Path(f"/proc/{process}/stat").read_text().rpartition(")")[2].split()
    return (int(own[11]) + int(own[12])) / TICKS


def row(host: Host, idle: int, busy: int, outcome: Outcome) -> str:
    """Return a line of the table."""
    rate = outcome.answered / outcome.seconds
    cost = outcome.processor / max(1, outcome.answered) * 1000
    wrong = outcome.asked - outcome.answered
    return (
        f"{host.name:<16}{idle:>6}{busy:>6}{outcome.answered:>10}{wrong:>8}{rate:>10.0f}"
        f"{cost:>14.3f}{outcome.slowest * 1000:>12.0f}"
    )


def main() -> None:
    """Print the table: the own server with some counts of threads, and nginx."""
    parser = argparse.ArgumentParser("python -m e2e.crowd", description=__doc__)
    parser.add_argument("--threads", nargs="+", type=int, default=[THREADS], help="counts of threads to try")
    threads = parser.parse_args().threads
    print(
        f"{'server':<16}{'idle':>6}{'busy':>6}{'answered':>10}{'not':>8}{'a second':>10}"
        f"{'processor ms':>14}{'slowest ms':>12}"
    )
    with tempfile.TemporaryDirectory() as folder:
        hosts = [own_server(Path(folder), count) for count in threads] + [nginx_host(Path(folder))]
        for hosting in hosts:
            with hosting as host:
                for idle, busy in CROWDS:
                    print(row(host, idle, busy, crowd(host, idle, busy)), flush=True)


if __name__ == "__main__":
    main()
