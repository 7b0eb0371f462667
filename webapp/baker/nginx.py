"""The configuration with which nginx serves a baked folder as the app's own server does."""

import re
from ipaddress import ip_address
from pathlib import Path
from urllib.parse import urlsplit

from webapp.baker.assets import CONTENT_TYPES
from webapp.baker.writer import ASKED_ANEW, KEPT_FOR_GOOD
from webapp.errors import BakeError
from webapp.security import ONLY_ON_PAGES, ONLY_OVER_TLS, security_headers

CONFIGURATION = """\
# Serves the app at {address}, by Debian's nginx and libnginx-mod-http-brotli-static:
# link this file into /etc/nginx/sites-enabled and reload. Phones keep it only over HTTPS: certbot adds that.
map $uri $sixteenth_kept {{
    default "{anew}";
    "~/v-[0-9a-f]+/" "{good}";
}}
{maps}

server {{
    listen {listen};
    server_name {name};
    server_tokens off;
    # No "always": what is missing today may be there tomorrow.
    add_header Cache-Control $sixteenth_kept;
{headers}

    types {{
{types}
    }}
    brotli_static on;
    gzip_static on;
    gzip_vary on;

    location {path} {{
        alias "{folder}/";
        # What is hidden, and the twins by names of their own, are nobody's.
        location ~ (/\\.|\\.br$|\\.gz$) {{
            return 404;
        }}
    }}{elsewhere}
}}
"""
ELSEWHERE = """
    location / {{
        return 404;
    }}
    location = {bare} {{
        return 301 {path};
    }}"""
MAP = """\
map ${asked} ${variable} {{
    default "";
    {case} "{value}";
}}"""
# Headers that only some answers carry: by which of nginx's variables, and in which case.
CASES = dict.fromkeys(ONLY_ON_PAGES, ("sent_http_content_type", '"~^text/html"'))
CASES |= dict.fromkeys(ONLY_OVER_TLS, ("https", "on"))


def nginx_configuration(folder: Path, address: str) -> str:
    """Return the configuration for a baked folder at the address that people use."""
    parts = urlsplit(address)
    path = f"{parts.path.rstrip('/')}/"
    where = str(folder.resolve())
    for text, says in ((where, "folder"), (path, "path")):
        if re.search(r'[\x00-\x1f\x7f"$\\;{}]' + (r"|\s" if says == "path" else ""), text):
            raise BakeError(f"nginx cannot be told of the {says} {text!r}. Choose one with a plainer name.")
    headers = security_headers(tls=True)
    return CONFIGURATION.format(
        address=address,
        folder=where,
        listen=_listen(parts.hostname or "", (parts.scheme == "http" and parts.port) or 80),
        name=parts.hostname,
        anew=ASKED_ANEW,
        good=KEPT_FOR_GOOD,
        maps="\n".join(_map(name, value) for name, value in headers if name in CASES),
        headers="\n".join(_header(name, value) for name, value in headers),
        types="\n".join(f'        "{kind}" {suffix[1:]};' for suffix, kind in CONTENT_TYPES.items()),
        path=path,
        elsewhere="" if path == "/" else ELSEWHERE.format(path=path, bare=path[:-1]),
    )


def _listen(host: str, port: int) -> str:
    """Return where to listen: at an address that is a number only there, at a name on every one."""
    try:
        number = ip_address(host)
    except ValueError:
        return str(port)
    return f"[{number}]:{port}" if number.version == 6 else f"{number}:{port}"


def _variable(name: str) -> str:
    return f"sixteenth_{name.lower().replace('-', '_')}"


def _map(name: str, value: str) -> str:
    asked, case = CASES[name]
    return MAP.format(asked=asked, variable=_variable(name), case=case, value=value)


def _header(name: str, value: str) -> str:
    # nginx sends no header whose value is empty.
    said = f"${_variable(name)}" if name in CASES else f'"{value}"'
    return f"    add_header {name} {said} always;"
