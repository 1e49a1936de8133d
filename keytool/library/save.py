"""Write a file whole or not at all."""

from __future__ import annotations

import errno
import os
import tempfile
from pathlib import Path


def save(path: Path, data: bytes) -> None:
    """Write `data` to `path`. Until the last moment the old file stays; nothing half-written is ever left.

    Raises:
        OSError: the folder does not exist or cannot be written, or a device or a folder stands there.
    """
    if path.exists() and not path.is_file():
        raise OSError(errno.EINVAL, "it is no plain file; name one that is, or one that is not there yet", str(path))
    handle, name = tempfile.mkstemp(dir=path.parent, prefix=f".{path.name}.")
    try:
        with os.fdopen(handle, "wb") as file:
            file.write(data)
        Path(name).chmod(0o644)
        Path(name).replace(path)
    except BaseException:
        Path(name).unlink(missing_ok=True)
        raise
