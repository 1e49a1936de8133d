"""The library as it was: an older revision of its repository, or another folder."""

from __future__ import annotations

import io
import subprocess
import tarfile
import tempfile
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path


class NoSuchBase(Exception):
    """Raised when there is nothing to compare with; the message says why and what would help."""


@contextmanager
def base(root: Path, named: str) -> Iterator[Path]:
    """The folder of the library to compare with: `named` is a folder that holds `keydata/`, or a revision of git.

    A revision is unpacked into a folder of its own for the time being; the work tree is not touched.

    Raises:
        NoSuchBase: there is no such folder or revision, or no git.
    """
    if (Path(named) / "keydata").is_dir():
        yield Path(named).resolve()
        return
    packed = _archive(root, named)
    with tempfile.TemporaryDirectory(prefix="wetmount-base-") as folder:
        with tarfile.open(fileobj=io.BytesIO(packed)) as archive:
            if hasattr(tarfile, "data_filter"):
                archive.extractall(folder, filter="data")
            else:  # before Python 3.11.4; a link may lead outside, and the library holds none
                archive.extractall(folder, members=[each for each in archive if each.isfile()])
        yield Path(folder)


def _archive(root: Path, revision: str) -> bytes:
    if revision.startswith("-"):
        raise NoSuchBase(f"'{revision}' is neither a folder with a keydata folder in it nor a revision.")
    try:
        command = ["git", "-C", str(root), "archive", "--format=tar", revision, "--", "keydata"]
        made = subprocess.run(command, capture_output=True, check=False)
    except FileNotFoundError:
        raise NoSuchBase(
            f"'{revision}' is no folder with a keydata folder in it, and git, which would know a revision of that name, "
            "is not installed. Name the folder of an older copy: --base FOLDER."
        ) from None
    if made.returncode:
        said = made.stderr.decode("utf-8", "replace").strip().splitlines()
        raise NoSuchBase(
            f"'{revision}' is neither a folder with a keydata folder in it nor a revision that git can give "
            f"({said[-1] if said else 'git gave no reason'}). Name an older copy or a revision, such as --base main."
        )
    return made.stdout
