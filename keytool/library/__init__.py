"""The library: files in `keydata/`, read, checked and made into frozen types."""

from keytool.library.finding import Finding, Place, Severity
from keytool.library.load import Loaded, load
from keytool.library.locate import NoLibrary, root
from keytool.library.model import Library

__all__ = ["Finding", "Library", "Loaded", "NoLibrary", "Place", "Severity", "load", "root"]
