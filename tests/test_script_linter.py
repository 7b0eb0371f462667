"""The scripts are read by a machine too: oxlint finds nothing in them, and would find each of these slips."""

import subprocess
import sysconfig
from pathlib import Path

import pytest

ROOT = Path(__file__).parent.parent
OXLINT = Path(sysconfig.get_path("scripts")) / "oxlint"

SLIPS = {
    "an undefined name": ("no-undef", "/** Ring. */\nexport const ring = () => bell();\n"),
    "an unused import": ("no-unused-vars", 'import { one } from "./other.js";\n'),
    "an unused name": ("no-unused-vars", "const depth = 1;\n"),
    "a shadowed name": ("no-shadow", "export const a = 1;\nexport const b = (a) => a;\n"),
    "a missing export": ("import(named)", 'import { two } from "./other.js";\nexport const three = two;\n'),
    "a circle": ("no-cycle", 'export { one } from "./other.js";\nexport const back = 1;\n'),
    "code that is never reached": ("no-unreachable", "export function a() {\n  return 1;\n  a();\n}\n"),
    "an import written twice": (
        "no-duplicates",
        'import { one } from "./other.js";\nimport { a } from "./other.js";\nexport const b = one + a;\n',
    ),
}


def lint(*arguments):
    """Run the linter with our settings; its exit code and what it says."""
    command = [OXLINT, "--config", ROOT / ".oxlintrc.json", "--format", "unix", *arguments]
    ran = subprocess.run(command, capture_output=True, text=True, check=False, cwd=ROOT)
    return ran.returncode, ran.stdout + ran.stderr


def test_the_linter_finds_nothing_in_the_scripts():
    assert lint("static") == (0, "")


def test_every_name_that_a_module_takes_from_the_printed_ones_is_there(baked):
    # The printed modules hold all helpers, needed or not, and nothing of a unit is 0 times a quantity.
    assert lint("--allow", "no-unused-vars", "--allow", "oxc/erasing-op", baked) == (0, "")


@pytest.mark.parametrize("slip", SLIPS)
def test_the_linter_finds_a_slip(slip, tmp_path):
    rule, text = SLIPS[slip]
    circle = 'import { back } from "./slip.js";\n' if rule == "no-cycle" else "const back = 1;\n"
    (tmp_path / "slip.js").write_text(text)
    (tmp_path / "other.js").write_text(f"{circle}export const one = back;\n")
    code, says = lint(tmp_path)
    assert code == 1
    assert rule in says
