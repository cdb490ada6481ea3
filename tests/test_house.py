"""The house keeps its shape: directions between rooms, sizes of files and functions, nothing that does not belong."""

import ast
import re
import subprocess
import sys
import tomllib
from pathlib import Path

import pytest

ROOT = Path(__file__).resolve().parents[1]
PYTHON = sorted(p for folder in ("scoring", "ringside") for p in (ROOT / folder).rglob("*.py"))
CODE = [path for path in PYTHON if "migrations" not in path.parts]


def test_rooms_look_one_way_and_the_core_knows_no_framework():
    linter = Path(sys.executable).with_name("lint-imports")
    done = subprocess.run([linter], cwd=ROOT, capture_output=True, text=True, check=False)
    assert done.returncode == 0, done.stdout


@pytest.mark.parametrize("path", CODE, ids=lambda p: str(p.relative_to(ROOT)))
def test_no_module_grows_past_400_lines(path):
    assert len(path.read_text(encoding="utf-8").splitlines()) <= 400


@pytest.mark.parametrize("path", CODE, ids=lambda p: str(p.relative_to(ROOT)))
def test_no_function_grows_past_40_lines(path):
    tree = ast.parse(path.read_text(encoding="utf-8"))
    functions = [node for node in ast.walk(tree) if isinstance(node, ast.FunctionDef)]
    too_long = [f.name for f in functions if (f.end_lineno or 0) - f.lineno + 1 - _docstring_lines(f) > 40]
    assert too_long == []


def _docstring_lines(function: ast.FunctionDef) -> int:
    first = function.body[0]
    is_text = isinstance(first, ast.Expr) and isinstance(first.value, ast.Constant)
    return (first.end_lineno or 0) - first.lineno + 1 if is_text else 0


def test_the_lock_names_versions_and_hashes_but_no_address():
    for name in ("requirements.lock", "requirements-dev.lock"):
        text = (ROOT / name).read_text(encoding="utf-8")
        assert "://" not in text
        pins = [line for line in text.splitlines() if re.match(r"[a-z0-9]", line)]
        assert pins
        assert all("==" in pin for pin in pins)
        assert text.count("--hash=sha256:") >= len(pins)


def test_every_direct_dependency_is_in_the_lock():
    project = tomllib.loads((ROOT / "pyproject.toml").read_text(encoding="utf-8"))["project"]
    lock = (ROOT / "requirements.lock").read_text(encoding="utf-8").lower()
    for wanted in project["dependencies"]:
        name = re.split(r"[\[<>=;]", wanted)[0]
        assert re.search(rf"^{re.escape(name)}==", lock, re.M), name
