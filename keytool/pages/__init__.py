"""The site: every page and asset as plain values, from the library alone.

`pages(library)` gives the pages in Markdown, `assets(library)` the style sheets, scripts and downloads, and
`write(library, folder)` the same as files, for any site builder.
"""

from keytool.pages.extras import Extras
from keytool.pages.page import Asset, Page
from keytool.pages.whole_site import assets, navigation, pages, write

__all__ = ["Asset", "Extras", "Page", "assets", "navigation", "pages", "write"]
