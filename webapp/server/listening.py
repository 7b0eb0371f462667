"""The server: waitress, whose own error answers carry the security headers too."""

from typing import Any

from flask import Flask
from waitress import create_server
from waitress.channel import HTTPChannel
from waitress.task import ErrorTask

from webapp.security import LARGEST_BODY, security_headers


class GuardedErrorTask(ErrorTask):
    """Answers a request that never reaches the application, such as one that is malformed or too large."""

    def execute(self) -> None:
        """Answer with the error, and with the headers of every other answer."""
        self.response_headers.extend(security_headers())
        super().execute()


class GuardedChannel(HTTPChannel):
    """A connection whose error answers are guarded."""

    error_task_class = GuardedErrorTask


def open_server(app: Flask, host: str, port: int, *, tls: bool = False) -> Any:
    """Open the port and return the server, whose `run` serves until it is stopped."""
    server = create_server(
        app,
        host=host,
        port=port,
        # The application says so in its own words, so it must get to see what is a little too large.
        max_request_body_size=2 * LARGEST_BODY,
        url_scheme="https" if tls else "http",
        ident=None,
    )
    for each in [server, *getattr(server, "map", {}).values()]:
        each.channel_class = GuardedChannel
    return server
