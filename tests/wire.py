"""A server on a port of its own, and what comes over the wire, which a test client never meets."""

import http.client
import socket
import ssl
import threading
from collections.abc import Iterator
from contextlib import contextmanager, suppress
from dataclasses import dataclass
from typing import Any

from flask import Flask
from waitress import wasyncore

from webapp.server.listening import open_server


@dataclass(frozen=True)
class Answer:
    """What came over the wire; headers by their names in small letters."""

    status: int
    headers: dict[str, str]
    body: bytes


@contextmanager
def serving(app: Flask, **settings: Any) -> Iterator[tuple[Any, threading.Thread]]:
    """Serve in a thread of this process; on the way out the server closes in its own thread, and it ends."""
    server = open_server(app, "127.0.0.1", 0, **settings)
    thread = threading.Thread(target=server.run)
    thread.start()
    try:
        yield server, thread
    finally:
        server.task_dispatcher.shutdown()
        # A socket that another thread closes is still in the list that the loop has begun to wait for.
        # The loop may wake, and close all, before the trigger has been pulled to the end.
        with suppress(OSError):
            server.trigger.pull_trigger(lambda: wasyncore.close_all(server._map))
        thread.join()


def ask(port: int, path: str, method: str = "GET", *, tls: bool = False, **headers: str) -> Answer:
    """Ask for a path and read the answer to its end."""
    connection = http.client.HTTPConnection("127.0.0.1", port, timeout=10)
    if tls:
        nobodys = ssl.SSLContext(ssl.PROTOCOL_TLS_CLIENT)
        nobodys.check_hostname, nobodys.verify_mode = False, ssl.CERT_NONE
        connection = http.client.HTTPSConnection("127.0.0.1", port, timeout=10, context=nobodys)
    try:
        connection.request(
            method, path, headers={key.replace("_", "-"): each for key, each in headers.items()}
        )
        return _read(connection.getresponse())
    finally:
        connection.close()


def ask_raw(port: int, *pieces: bytes) -> Answer:
    """Send bytes as they are, piece by piece, and read the answer."""
    connection = http.client.HTTPConnection("127.0.0.1", port, timeout=10)
    connection.connect()
    try:
        for piece in pieces:
            connection.sock.sendall(piece)
        response = http.client.HTTPResponse(connection.sock)
        response.begin()
        return _read(response)
    finally:
        connection.close()


def ask_in_turn(port: int, *requests: bytes) -> list[Answer]:
    """Send one request after another over one connection, and read each answer."""
    with socket.create_connection(("127.0.0.1", port), timeout=10) as connection:
        answers = []
        for request in requests:
            connection.sendall(request)
            response = http.client.HTTPResponse(connection)
            response.begin()
            answers.append(_read(response))
        return answers


def _read(response: http.client.HTTPResponse) -> Answer:
    with response:
        headers = {name.lower(): value for name, value in response.getheaders()}
        return Answer(response.status, headers, response.read())
