"""Where the hand-written part of the site is."""

from __future__ import annotations

from importlib import resources
from pathlib import Path


def written_root(root: Path | None = None) -> Path:
    """The folder that holds `mkdocs.yml` and `site/`.

    The root of the library where it has its own, else the checkout this package is run from,
    else the copy that was installed with it.
    """
    bundled = Path(str(resources.files("keytool"))) / "_bundled"
    places = [*([root] if root else []), Path(__file__).resolve().parents[2], bundled]
    return next((each for each in places if (each / "mkdocs.yml").is_file() and (each / "site" / "pages").is_dir()), bundled)
