"""The commands of `python -m webapp`, in one table; without a command it serves."""

import argparse
import re
import sys
from collections.abc import Callable, Sequence
from dataclasses import dataclass
from pathlib import Path
from typing import NoReturn
from urllib.parse import urlsplit

from webapp.app import Settings, create_app
from webapp.baker.nginx import nginx_configuration
from webapp.baker.site import bake
from webapp.errors import BakeError, JobFileError
from webapp.job.file import LARGEST, read_job
from webapp.printer.book_text import book_text
from webapp.server.listening import open_server
from webapp.sheet.report import job_sheet_text, plan_as_json
from webapp.sheet.wiring import load_sheet
from webapp.terminal import drop_output, finish_output, say_wrong, visible, visible_in, write_what_it_can

PROGRAM = "python -m webapp"
HOST = "127.0.0.1"
PORT = 8016
DEFAULT = "serve"
LAST_PORT = 65_535
_HOST = re.compile(r"([\w.-]+|\[[0-9A-Fa-f:.]+\])(:[0-9]+)?", re.ASCII)
LOCAL = "http://localhost/"


@dataclass(frozen=True)
class Command:
    """A command: its help, the arguments that it takes, and what it does; it returns the exit code."""

    help: str
    arguments: Callable[[argparse.ArgumentParser], None]
    run: Callable[[argparse.Namespace], int]


def serve_arguments(parser: argparse.ArgumentParser) -> None:
    """Add the arguments of `serve`."""
    parser.add_argument("--host", default=HOST, help="the address to listen on (default: this machine only)")
    parser.add_argument(
        "--port", default=PORT, type=_port, help=f"the port (default: {PORT}; 0: any free one)"
    )
    parser.add_argument("--instance", default=Path("instance"), type=Path, help="the folder to keep files in")
    parser.add_argument(
        "--address", default="", type=_address, help="the address people use, if behind a proxy"
    )


def serve(options: argparse.Namespace) -> int:
    """Bake the site, then serve it until the process is stopped."""
    settings = Settings(options.instance, options.address)
    app = create_app(settings)
    try:
        server = open_server(app, options.host, options.port, tls=settings.has_tls)
    except (OSError, ValueError) as error:
        why = str(error.strerror if isinstance(error, OSError) else error).rstrip(".")
        place = f"Cannot listen on {options.host}:{options.port}"
        return say_wrong(place, f"{why}. Choose another --port or --host.")
    port = getattr(server, "effective_port", options.port)
    print(f"Sixteenth is at http://{options.host}:{port}/ (stop it with Ctrl+C)", flush=True)
    server.run()
    return 0


def bake_arguments(parser: argparse.ArgumentParser) -> None:
    """Add the arguments of `bake`."""
    parser.add_argument("folder", type=Path, help="the folder that a static host serves")
    parser.add_argument(
        "--nginx",
        nargs="?",
        const=LOCAL,
        type=_address,
        metavar="ADDRESS",
        help=f"write a configuration for nginx beside the folder (address, if not given: {LOCAL})",
    )


def bake_folder(options: argparse.Namespace) -> int:
    """Bake the site into a folder for a static host, and write a configuration for it."""
    folder = options.folder.resolve()
    try:
        text = nginx_configuration(folder, options.nginx) if options.nginx else ""
        site = bake(options.folder)
        print(visible(f"{site.folder}: version {site.version}, {len(site.written)} files written"))
        if text:
            beside = folder.with_name(f"{folder.name or 'site'}.nginx.conf")
            beside.write_text(text, encoding="utf-8")
            print(visible(f"{beside}: the configuration for nginx"))
    except (OSError, BakeError) as error:
        return say_wrong(options.folder, error)
    return 0


def plan_arguments(parser: argparse.ArgumentParser) -> None:
    """Add the arguments of `plan`."""
    parser.add_argument("job", type=Path, help="the job file")
    parser.add_argument("--text", action="store_true", help="print the job sheet for people, not JSON")


def print_plan(options: argparse.Namespace) -> int:
    """Print every figure of a job file, as JSON or as the job sheet."""
    try:
        with options.job.open("rb") as file:
            job = read_job(file.read(LARGEST + 1))
        text = job_sheet_text(visible_in(job)) if options.text else plan_as_json(job)
    except (OSError, JobFileError) as error:
        return say_wrong(options.job, error)
    print(text)
    return 0


def book_arguments(parser: argparse.ArgumentParser) -> None:
    """Add the arguments of `book`: it takes none."""


def print_book(options: argparse.Namespace) -> int:
    """Print the formula book as a page of text."""
    print(book_text(load_sheet()), end="")
    return 0


COMMANDS: dict[str, Command] = {
    "serve": Command("bake the site and serve it", serve_arguments, serve),
    "bake": Command("bake the site into a folder", bake_arguments, bake_folder),
    "plan": Command("print every figure of a job file", plan_arguments, print_plan),
    "book": Command("print the formula book", book_arguments, print_book),
}


def main(arguments: Sequence[str] | None = None) -> int:
    """Run the command that the arguments name and return its exit code."""
    given = list(sys.argv[1:] if arguments is None else arguments)
    if not given or given[0] not in (*COMMANDS, "-h", "--help"):
        given.insert(0, DEFAULT)
    write_what_it_can()
    options = build_parser().parse_args(given)
    try:
        code = COMMANDS[options.command].run(options)
        finish_output()
    except BrokenPipeError:
        drop_output()
        return 1
    except OSError as error:
        drop_output()
        return say_wrong(error.filename or f"{PROGRAM} {options.command}", error)
    return code


class Parser(argparse.ArgumentParser):
    """A parser whose complaints are visible to the last sign."""

    def error(self, message: str) -> NoReturn:
        """Say what is wrong with the arguments, and end."""
        super().error(visible(message))


def build_parser() -> argparse.ArgumentParser:
    """Return the parser of all commands."""
    parser = Parser(PROGRAM, description=__doc__)
    commands = parser.add_subparsers(dest="command", required=True, metavar="COMMAND")
    for name, command in COMMANDS.items():
        command.arguments(commands.add_parser(name, help=command.help, description=command.help))
    return parser


def _address(text: str) -> str:
    try:
        parts = urlsplit(text)
        is_one = parts.scheme in ("http", "https") and _HOST.fullmatch(parts.netloc) and parts.port != 0
    except ValueError:
        is_one = None
    if text and not is_one:
        raise argparse.ArgumentTypeError(f"{text!r} is no address such as https://sixteenth.example")
    return text


def _port(text: str) -> int:
    if not text.isdecimal() or int(text) > LAST_PORT:
        raise argparse.ArgumentTypeError(f"{text!r} is no port: choose a number from 0 to {LAST_PORT}")
    return int(text)
