"""nginx, with the configuration that the bake writes, answers for every baked file as the own server does."""

import shutil
import subprocess
from pathlib import Path

import pytest

from e2e.nginx import executable, free_port, nginx_with
from tests.wire import ask, ask_raw, serving
from webapp.app import Settings, create_app
from webapp.baker.nginx import nginx_configuration
from webapp.baker.site import bake
from webapp.cli import main
from webapp.errors import BakeError

ENCODINGS = ("br", "gzip", "gzip;q=0.5, br;q=0", "br, gzip", "")
# What is a server's own: its name, its clock, its tags, and that it cuts parts of a twin.
OWN = {"date", "server", "connection", "etag", "last-modified", "accept-ranges"}


@pytest.fixture(scope="module")
def site(instance):
    """A baked site, and the port of the app's own server for it."""
    app = create_app(Settings(instance))
    with serving(app) as (server, _):
        yield bake(instance / "site"), server.effective_port


@pytest.fixture(scope="module")
def nginx(site, tmp_path_factory):
    """The port of nginx with exactly the file that the command writes."""
    place = tmp_path_factory.mktemp("nginx")
    port = free_port()
    folder = site[0].folder
    assert main(["bake", str(folder), "--nginx", f"http://127.0.0.1:{port}/"]) == 0
    with nginx_with(folder.with_name("site.nginx.conf"), place, port):
        yield port


def addresses(site):
    twins = (".br", ".gz")
    return ["/" if name == "index.html" else f"/{name}" for name in site.files if not name.endswith(twins)]


def common(answer):
    return {name: value for name, value in answer.headers.items() if name not in OWN}


def test_every_baked_file_has_the_same_headers_and_twins(site, nginx):
    baked, port = site
    assert len(addresses(baked)) > 90
    for path in addresses(baked):
        for encoding in ENCODINGS:
            own, other = (ask(each, path, Accept_Encoding=encoding) for each in (port, nginx))
            assert (own.status, other.status) == (200, 200), path
            assert common(other) == common(own), (path, encoding)
            assert other.body == own.body, (path, encoding)


def test_who_has_a_file_is_told_so_with_the_same_headers(site, nginx):
    for path in addresses(site[0]):
        for encoding in ("br", ""):
            answers = []
            for port in (site[1], nginx):
                tag = ask(port, path, Accept_Encoding=encoding).headers["etag"]
                answers.append(ask(port, path, Accept_Encoding=encoding, If_None_Match=tag))
            own, other = answers
            assert (own.status, other.status, other.body) == (304, 304, b"")
            assert common(other) == common(own), (path, encoding)


def test_each_form_has_a_tag_of_its_own(nginx):
    assert len({ask(nginx, "/", Accept_Encoding=each).headers["etag"] for each in ("br", "gzip", "")}) == 3


@pytest.mark.parametrize(
    "path",
    ["/.baked.json", "/%2ebaked.json", "/index.html.br", "/service-worker.js.gz", "/nowhere", "/v-0/app.js"],
)
def test_what_is_not_served_is_no_more_served_by_nginx_and_never_kept(site, nginx, path):
    own, other = ask(site[1], path), ask(nginx, path)
    assert (own.status, other.status) == (404, 404)
    assert "cache-control" not in other.headers
    guards = {name for name in own.headers if name not in OWN} - {"cache-control", "content-length"}
    for name in guards - {"content-type"}:
        assert other.headers[name] == own.headers[name]


def test_what_nginx_cannot_read_is_answered_with_the_headers_too(nginx):
    answer = ask_raw(nginx, b"NONSENSE\r\n\r\n")
    assert answer.status == 400
    assert "default-src 'none'" in answer.headers["content-security-policy"]


def test_in_a_sub_folder_it_is_the_same_and_beside_it_there_is_nothing(site, tmp_path):
    port = free_port()
    written = tmp_path / "site.nginx.conf"
    written.write_text(nginx_configuration(site[0].folder, f"http://127.0.0.1:{port}/shop/signs"))
    with nginx_with(written, tmp_path, port):
        for path in ("/", "/service-worker.js", f"/v-{site[0].version}/app.js", "/icons/mark-192.png"):
            own = ask(site[1], path, Accept_Encoding="br")
            other = ask(port, f"/shop/signs{path}", Accept_Encoding="br")
            assert (other.status, common(other), other.body) == (200, common(own), own.body)
        assert ask(port, "/shop/signs").status == 301
        assert ask(port, "/").status == 404
        assert ask(port, "/shop/signs/.baked.json").status == 404


def test_the_promise_of_tls_is_only_made_over_tls(site, tmp_path):
    key, certificate = tmp_path / "key.pem", tmp_path / "certificate.pem"
    subject = ["-subj", "/CN=localhost", "-days", "2", "-nodes"]
    subprocess.run(
        ["openssl", "req", "-x509", "-newkey", "rsa:2048", *subject, "-keyout", key, "-out", certificate],
        check=True,
        capture_output=True,
    )
    plain, tls = free_port(), free_port()
    text = nginx_configuration(site[0].folder, f"http://127.0.0.1:{plain}/")
    listens = f"listen 127.0.0.1:{plain};"
    # The three lines that certbot adds.
    added = f"listen 127.0.0.1:{tls} ssl; ssl_certificate {certificate}; ssl_certificate_key {key};"
    assert listens in text
    written = tmp_path / "site.nginx.conf"
    written.write_text(text.replace(listens, f"{listens} {added}"))
    with nginx_with(written, tmp_path, plain):
        assert "strict-transport-security" not in ask(plain, "/").headers
        promised = ask(tls, "/", tls=True).headers["strict-transport-security"]
    assert promised == "max-age=31536000"


def test_the_file_is_written_beside_the_folder_and_not_into_it(baked, tmp_path, capsys):
    shutil.copytree(baked, tmp_path / "app")
    assert main(["bake", str(tmp_path / "app"), "--nginx"]) == 0
    assert (tmp_path / "app.nginx.conf").read_text().startswith("# Serves the app at http://localhost/")
    assert not list((tmp_path / "app").rglob("*.conf"))
    assert "app.nginx.conf" in capsys.readouterr().out


@pytest.mark.parametrize("folder", ["a $uri", 'a "quote', "a\nline", "a\\slash"])
def test_a_folder_whose_name_would_be_read_as_an_order_is_refused(tmp_path, folder):
    with pytest.raises(BakeError, match="plainer name"):
        nginx_configuration(tmp_path / folder, "http://localhost/")


@pytest.mark.parametrize("address", ["http://localhost/a b", "http://localhost/;", "http://localhost/{x}"])
def test_a_path_that_would_be_read_as_an_order_is_refused(tmp_path, address):
    with pytest.raises(BakeError, match="plainer name"):
        nginx_configuration(tmp_path, address)


def test_debians_nginx_is_there():
    assert Path(executable()).name == "nginx"
