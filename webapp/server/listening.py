"""The server: waitress, set for a crowd; its own error answers carry the security headers too.

`python -m e2e.crowd` measures it beside nginx. What a file costs hardly depends on the threads; but each plan
that waits for its turn holds one, and when all are held files wait as well (two cores, other work beside):

    threads   processor, 256 busy   slowest file of 16 busy, while 6 send jobs of 300 faces
          2               0.13 ms   4.5 s
          4               0.15 ms   2.8 s
          8               0.13 ms   0.1 s
         16               0.18 ms   0.3 s
"""

import logging
from typing import Any

from flask import Flask
from waitress import create_server
from waitress.channel import HTTPChannel
from waitress.parser import HTTPRequestParser, ParsingError
from waitress.task import ErrorTask, WSGITask

from webapp.security import LARGEST_BODY, security_headers

THREADS = 16
# Over this many connections the one that was silent the longest goes, so that nobody waits for the idle.
MOST_CONNECTIONS = 480
# Besides connections, waitress counts its own two sockets; select() and most systems end at 1,024.
WAITRESS_LIMIT = MOST_CONNECTIONS + 40
SILENCE = 30
LARGEST_HEADER = 64 * 1024


class KeepingTask(WSGITask):
    """Answers a request; waitress would end the connection after a 304, for want of a length."""

    def set_close_on_finish(self) -> None:
        """End the connection after this answer, unless all it lacks is a content and nobody asked for it."""
        is_asked = self.request.headers.get("CONNECTION", "").lower() == "close"
        if self.has_body or is_asked or self.version != "1.1":
            super().set_close_on_finish()


class GuardedErrorTask(ErrorTask):
    """Answers a request that never reaches the application, such as one that is malformed or too large."""

    def execute(self) -> None:
        """Answer with the error, and with the headers of every other answer."""
        is_tls = self.channel.adj.url_scheme == "https"
        self.response_headers.extend(security_headers(tls=is_tls))
        super().execute()


class GuardedParser(HTTPRequestParser):
    """Reads a request; an address that cannot be taken apart is a malformed request, not an accident."""

    def parse_header(self, header_plus: bytes) -> None:
        """Read the first line and the headers."""
        try:
            super().parse_header(header_plus)
        except ValueError as error:
            raise ParsingError("The address of the request cannot be read") from error


class GuardedChannel(HTTPChannel):
    """A connection whose error answers are guarded, and which makes room for itself."""

    task_class = KeepingTask
    error_task_class = GuardedErrorTask
    parser_class = GuardedParser

    def __init__(self, server: Any, *rest: Any, **named: Any) -> None:
        super().__init__(server, *rest, **named)
        others = [
            each for each in server.active_channels.values() if each is not self and not each.will_close
        ]
        if len(others) >= MOST_CONNECTIONS:
            silent = [each for each in others if not each.requests and not each.total_outbufs_len]
            if silent:
                min(silent, key=lambda each: each.last_activity).will_close = True


def open_server(app: Flask, host: str, port: int, *, tls: bool = False, threads: int = THREADS) -> Any:
    """Open the port and return the server, whose `run` serves until it is stopped."""
    server = create_server(
        app,
        host=host,
        port=port,
        threads=threads,
        connection_limit=WAITRESS_LIMIT,
        channel_timeout=SILENCE,
        cleanup_interval=SILENCE // 3,
        asyncore_use_poll=True,
        max_request_header_size=LARGEST_HEADER,
        # The application says so in its own words, so it must get to see what is a little too large.
        max_request_body_size=2 * LARGEST_BODY,
        url_scheme="https" if tls else "http",
        ident=None,
    )
    # A queue is what a crowd makes; a line on the terminal for each who waits would slow them all.
    logging.getLogger("waitress.queue").setLevel(logging.ERROR)
    for each in [server, *getattr(server, "map", {}).values()]:
        each.channel_class = GuardedChannel
    return server
