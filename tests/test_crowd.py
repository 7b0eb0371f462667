"""A crowd at the server: everybody is answered, and who is silent stands in nobody's way."""

import asyncio

import pytest

from e2e.crowd import apart, crowd, nginx_host, own_server


@pytest.fixture(scope="module", params=[own_server, nginx_host], ids=["own server", "nginx"])
def host(request, instance):
    with request.param(instance) as running:
        yield running


@pytest.mark.parametrize(("idle", "busy"), [(0, 256), (192, 64), (255, 1)])
def test_of_256_connections_everyone_is_answered_and_none_is_refused(host, idle, busy):
    outcome = crowd(host, idle, busy, answers=1024)
    assert (outcome.answered, outcome.refused, outcome.cut) == (1024, 0, 0)


def test_more_silent_connections_than_there_is_room_for_hold_nobody_up(instance):
    with own_server(instance) as host:
        outcome = crowd(host, idle=700, busy=20, answers=200)
    assert (outcome.answered, outcome.refused, outcome.cut) == (200, 0, 0)


def test_half_a_request_is_as_silent_as_none(instance):
    async def begin(port):
        reader, writer = await asyncio.open_connection("127.0.0.1", port)
        writer.write(b"GET / HTTP/1.1\r\nHost: he")
        await writer.drain()
        return reader, writer

    async def begin_all(port):
        return [await begin(port) for _ in range(600)]

    async def talk(port):
        begun = await begin_all(port)
        reader, writer = begun[-1]
        writer.write(b"re\r\n\r\n")
        said = await reader.readline()
        for _, each in begun:
            each.close()
        return said

    with own_server(instance) as host:
        assert apart(talk(host.port)) == b"HTTP/1.1 200 OK\r\n"
