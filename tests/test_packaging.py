"""The project as a stranger meets it: the wheel holds the library, the layout is as promised."""

import re
import subprocess
import sys
import zipfile
from pathlib import Path

import pytest
import yaml

from keytool.library import NoLibrary, root

PROJECT = Path(__file__).parents[1]


@pytest.fixture(scope="module")
def wheel(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The wheel, built through the source distribution as an installer would."""
    out = tmp_path_factory.mktemp("dist")
    subprocess.run([sys.executable, "-m", "build", "--outdir", str(out), str(PROJECT)], check=True, capture_output=True)
    return next(out.glob("*.whl"))


def test_an_installed_wheel_has_the_library_and_works_from_anywhere(wheel: Path, tmp_path: Path) -> None:
    with zipfile.ZipFile(wheel) as packed:
        packed.extractall(tmp_path / "installed")
    result = subprocess.run(
        [sys.executable, "-c", "from keytool.cli import main; main(['list', 'keys'])"],
        cwd="/",
        check=True,
        capture_output=True,
        text=True,
        env={"PYTHONPATH": str(tmp_path / "installed"), "PATH": "/usr/bin:/bin"},
    )
    assert "nematode-mouthparts" in result.stdout


def test_the_wheel_holds_site_sources_and_licences(wheel: Path) -> None:
    names = zipfile.ZipFile(wheel).namelist()
    for wanted in ("keytool/_bundled/mkdocs.yml", "keytool/_bundled/site/pages/index.md", "keytool/_bundled/keydata/vocabulary.yaml"):
        assert wanted in names
    assert any(name.endswith("LICENSE-CONTENT") for name in names)


def test_the_library_is_found_by_name_by_variable_and_beside_the_code(mini: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    assert root(mini) == mini.resolve()
    assert root() == PROJECT
    monkeypatch.setenv("WETMOUNT_LIBRARY", str(mini))
    assert root() == mini.resolve()
    with pytest.raises(NoLibrary, match="There is no keydata folder"):
        root(PROJECT / "tests")


def test_the_built_site_never_goes_where_its_sources_are() -> None:
    text = (PROJECT / "mkdocs.yml").read_text("utf-8")
    assert re.search(r"^site_dir: build/site(?:\s|$)", text, re.MULTILINE)
    assert "/site" not in (PROJECT / ".gitignore").read_text("utf-8").split()


def test_the_top_level_is_the_fixed_one() -> None:
    tracked = subprocess.run(
        ["git", "ls-tree", "--name-only", "HEAD"], cwd=PROJECT, capture_output=True, text=True, check=True
    ).stdout.split()
    assert {"keydata", "keytool", "site", "tests", "mkdocs.yml", "pyproject.toml", "README.md", "DEVELOPERS.md"} <= set(tracked)
    assert set(tracked) <= {
        "keydata",
        "keytool",
        "site",
        "tests",
        "benchmarks",
        "mkdocs.yml",
        "pyproject.toml",
        "README.md",
        "DEVELOPERS.md",
        "Makefile",
        "LICENSE",
        "LICENSE-CONTENT",
        "CHANGELOG.md",
        "CITATION.cff",
        ".ci",
        ".gitignore",
    }


def test_versions_agree() -> None:
    from keytool import __version__

    citation = yaml.safe_load((PROJECT / "CITATION.cff").read_text("utf-8"))
    assert citation["version"] == __version__
    assert f"## {__version__} " in (PROJECT / "CHANGELOG.md").read_text("utf-8")
