"""Write a file whole or not at all."""

from __future__ import annotations

import os
import tempfile
from pathlib import Path


def save(path: Path, data: bytes) -> None:
    """Write `data` to `path`. Until the last moment the old file stays; nothing half-written is ever left.

    Raises:
        OSError: the folder does not exist or cannot be written.
    """
    handle, name = tempfile.mkstemp(dir=path.parent, prefix=f".{path.name}.")
    try:
        with os.fdopen(handle, "wb") as file:
            file.write(data)
        Path(name).chmod(0o644)
        Path(name).replace(path)
    except BaseException:
        Path(name).unlink(missing_ok=True)
        raise
