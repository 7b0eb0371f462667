"""On a terminal: whatever the bytes of a job file, `plan` answers in words that steer nothing."""

import json
import os
import subprocess
import sys

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from tests.running import drawn
from webapp.cli import main
from webapp.errors import JobFileError
from webapp.job.demo import EXAMPLE_JOB
from webapp.sheet.report import plan_as_json

# What clears a screen, names a window, turns the line around, and is half a character: from memory.
STEERING = "\x1b[2J \x1b]0;mine\x07 \x9b31m \u202egnp.exe \r\n over \ud83d half \x7f"
UNSEEN = set(map(chr, [*range(0x20), *range(0x7F, 0xA0), 0x202E, 0xD83D])) - {"\n"}
PLAIN_TERMINAL = {"LC_ALL": "C", "PYTHONUTF8": "0", "PYTHONCOERCECLOCALE": "0"}


def written(folder, **changes):
    file = folder / "job.json"
    file.write_text(json.dumps({**EXAMPLE_JOB, **changes}), encoding="utf-8")
    return file


def run(*arguments, **settings):
    command = [sys.executable, "-m", "webapp", *map(str, arguments)]
    return subprocess.run(command, stderr=subprocess.PIPE, **settings)


@pytest.mark.parametrize("as_text", [["--text"], []], ids=["text", "json"])
def test_a_name_from_a_file_steers_no_terminal(tmp_path, capsys, as_text):
    job = json.loads(json.dumps(EXAMPLE_JOB))
    job["name"] = job["card"]["name"] = job["colours"][0]["name"] = job["colours"][0]["faces"][0]["name"] = (
        STEERING
    )
    job["room"]["air_temperature"] = STEERING
    code = main(["plan", str(written(tmp_path, **job)), *as_text])
    said = capsys.readouterr()
    assert not UNSEEN & set(said.out + said.err)
    assert code == 1 or "x1b[2J" in said.out or "u001b[2J" in said.out


def test_a_line_break_in_a_name_begins_no_line_of_the_job_sheet(tmp_path, capsys):
    code = main(["plan", str(written(tmp_path, name="Sign\nSTOP: nothing is wrong")), "--text"])
    lines = capsys.readouterr().out.splitlines()
    assert code == 1 or lines[0] == r"Sign\nSTOP: nothing is wrong"
    assert "STOP: nothing is wrong" not in lines


def test_a_path_in_a_message_steers_no_terminal(tmp_path, capsys):
    for name in ("no\x1b[2Jfile", "no\udcfffile", "no\nfile"):
        assert main(["plan", str(tmp_path / name)]) == 1
        said = capsys.readouterr().err
        assert not UNSEEN & set(said)
        assert said.count("\n") == 1


def test_an_argument_that_is_not_known_steers_no_terminal(capsys):
    with pytest.raises(SystemExit):
        main(["plan", "job.json", "--\x1b[2J"])
    assert not UNSEEN & set(capsys.readouterr().err)


@pytest.mark.parametrize(
    "arguments",
    [
        ["serve", "--port", "99999"],
        ["serve", "--port", "-1"],
        ["serve", "--address", "http://["],
        ["bake", "app", "--nginx", "http://shop:99999/"],
        ["bake", "app", "--nginx", "http://shop;x/"],
        ["bake", "app", "--nginx", "ftp://shop/"],
    ],
    ids=" ".join,
)
def test_an_address_or_a_port_that_is_none_is_said_so(capsys, arguments):
    with pytest.raises(SystemExit):
        main(arguments)
    assert "is no address such as" in (said := capsys.readouterr().err) or "is no port" in said


@pytest.mark.parametrize("arguments", [["serve", "--instance"], ["bake"]], ids=["serve", "bake"])
def test_a_place_that_cannot_be_written_is_said_in_one_line(tmp_path, capsys, arguments):
    file = tmp_path / "letter.txt"
    file.write_text("Dear sign maker")
    assert main([*arguments, str(file)]) == 1
    said = capsys.readouterr().err
    assert str(file) in said
    assert said.count("\n") == 1


@pytest.mark.parametrize(
    "path", ["", ".", "/proc/self/mem", "/nowhere/job.json", "/dev/null", "/dev/zero", "x" * 5000]
)
def test_what_is_no_file_of_a_job_is_said_in_one_line(capsys, path):
    assert main(["plan", path]) == 1
    said = capsys.readouterr()
    assert (said.out, said.err.count("\n")) == ("", 1)


@pytest.mark.parametrize("as_text", [["--text"], []], ids=["text", "json"])
def test_a_terminal_that_knows_only_ascii_gets_numbers_for_what_it_lacks(tmp_path, as_text):
    file = written(tmp_path, name="Café 😀 Straße")
    for environment in ({**PLAIN_TERMINAL}, {"PYTHONIOENCODING": "ascii:strict"}):
        ended = run("plan", file, *as_text, stdout=subprocess.PIPE, env={**os.environ, **environment})
        assert (ended.returncode, ended.stderr) == (0, b"")
        said = ended.stdout.decode("ascii")
        assert (r"Caf\xe9 \U0001f600" in said) if as_text else json.loads(said)["name"] == "Café 😀 Straße"


def test_a_pipe_that_closes_early_is_no_accident(tmp_path):
    reading, writing = os.pipe()
    os.close(reading)
    ended = run("plan", written(tmp_path), stdout=writing)
    os.close(writing)
    assert (ended.returncode, ended.stderr) == (1, b"")


def test_a_disk_that_is_full_is_said_in_one_line(tmp_path):
    with open("/dev/full", "wb") as full:
        ended = run("plan", written(tmp_path), stdout=full)
    assert ended.returncode == 1
    assert ended.stderr.decode().count("\n") == 1
    assert b"No space left" in ended.stderr


def test_an_output_that_is_closed_is_no_accident(tmp_path):
    command = f"{sys.executable} -m webapp plan {written(tmp_path)} >&-"
    ended = subprocess.run(["bash", "-c", command], stderr=subprocess.PIPE)
    assert b"Traceback" not in ended.stderr


@pytest.mark.parametrize("value", [float("inf"), float("nan"), -float("inf")])
def test_a_number_past_all_measure_is_refused_and_never_written(value):
    with pytest.raises(JobFileError, match="past all measure"):
        plan_as_json({**EXAMPLE_JOB, "room": {**EXAMPLE_JOB["room"], "air_temperature": value}})


GOOD = json.dumps(EXAMPLE_JOB).encode()
ODD = st.sampled_from(
    [
        *(b"1e999", b"-1e999", b"NaN", b"1e308", b"-0", b"1" * 400, b"1" * 5000),
        *(b"null", b"true", b"[]", b"{}", b'""', b"[" * 3000, b'{"a":' * 3000),
        *(b'"\\ud800"', b'"\\u001b[2J"', b"\x1b]0;x\x07", b"\xff", b"\x00", b"\xef\xbb\xbf"),
    ]
)


def no_constant(name):
    raise AssertionError(f"{name} is no JSON")


@settings(
    max_examples=drawn(1500), deadline=None, suppress_health_check=[HealthCheck.function_scoped_fixture]
)
@given(data=st.data())
def test_whatever_the_bytes_plan_answers_or_refuses_in_one_line(tmp_path, capsys, data):
    content = bytearray(GOOD)
    for _ in range(data.draw(st.integers(1, 3))):
        at = data.draw(st.integers(0, len(content)))
        content[at : at + data.draw(st.integers(0, 30))] = data.draw(ODD | st.binary(max_size=8))
    file = tmp_path / "job.json"
    file.write_bytes(bytes(content))
    for as_text in ([], ["--text"]):
        code = main(["plan", str(file), *as_text])
        said = capsys.readouterr()
        assert not UNSEEN & set(said.out + said.err)
        if code == 0 and not as_text:
            json.loads(said.out, parse_constant=no_constant)
        if code != 0:
            assert (said.out, said.err.count("\n")) == ("", 1)
