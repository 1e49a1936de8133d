"""Find the library: the folder that holds `keydata/`, `site/` and `mkdocs.yml`."""

from __future__ import annotations

import os
from importlib import resources
from pathlib import Path

VARIABLE = "WETMOUNT_LIBRARY"


class NoLibrary(Exception):
    """Raised when the folder named holds no `keydata/`; the message says where was looked."""


def root(named: Path | None = None) -> Path:
    """The root folder of the library.

    In order: the folder named, the one in the environment variable WETMOUNT_LIBRARY, the
    checkout this package is run from, the copy that was installed with it.

    Raises:
        NoLibrary: a folder was named, but has no `keydata/` in it.
    """
    if named or os.environ.get(VARIABLE):
        folder = Path(named or os.environ[VARIABLE])
        if not (folder / "keydata").is_dir():
            raise NoLibrary(f"There is no keydata folder in '{folder}'.")
        return folder.resolve()
    checkout = Path(__file__).resolve().parents[2]
    if (checkout / "pyproject.toml").is_file() and (checkout / "keydata").is_dir():
        return checkout
    return Path(str(resources.files("keytool"))) / "_bundled"
