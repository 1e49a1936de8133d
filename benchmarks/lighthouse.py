"""Lighthouse as a phone sees the site: home, a key, an entry, the live field, on a server that packs text. Prints; asserts nothing.

Lighthouse comes from npm and is fetched into a folder of its own the first time; Chromium is the machine's.

Run: python benchmarks/lighthouse.py [FOLDER OF THE BUILT SITE]
"""

from __future__ import annotations

import gzip
import json
import os
import shutil
import subprocess
import sys
import threading
from collections.abc import Iterator
from contextlib import contextmanager
from functools import partial
from http.server import SimpleHTTPRequestHandler, ThreadingHTTPServer
from pathlib import Path

PROJECT = Path(__file__).parents[1]
VERSION = "12.8.2"
TOOLS = Path(os.environ.get("XDG_CACHE_HOME") or Path.home() / ".cache") / "wetmount-lighthouse"
PAGES = ("index.html", "keys/first-look.html", "entries/plectus.html", "live-field.html")
CATEGORIES = ("performance", "accessibility", "best-practices", "seo")
TEXT = (".html", ".js", ".css", ".svg", ".json", ".txt", ".webmanifest", ".xml")


class Packed(SimpleHTTPRequestHandler):
    """Serves files, and packs text as any web server for static sites does."""

    protocol_version = "HTTP/1.1"

    def do_GET(self) -> None:
        path = Path(self.translate_path(self.path))
        path = path / "index.html" if path.is_dir() else path
        if not path.is_file():
            self.send_error(404)
            return
        content, is_text = path.read_bytes(), path.suffix in TEXT
        content = gzip.compress(content, 6) if is_text else content
        self.send_response(200)
        self.send_header("Content-Type", self.guess_type(str(path)) + ("; charset=utf-8" if is_text else ""))
        if is_text:
            self.send_header("Content-Encoding", "gzip")
        self.send_header("Cache-Control", "max-age=31536000" if path.suffix != ".html" else "no-cache")
        self.send_header("Content-Length", str(len(content)))
        self.end_headers()
        self.wfile.write(content)

    def log_message(self, *_: object) -> None:
        """Nothing is logged."""


@contextmanager
def served(site: Path) -> Iterator[str]:
    """The address of the site while it is served."""
    server = ThreadingHTTPServer(("127.0.0.1", 0), partial(Packed, directory=str(site)))
    threading.Thread(target=server.serve_forever, daemon=True).start()
    yield f"http://127.0.0.1:{server.server_port}"
    server.shutdown()


def lighthouse() -> Path:
    """The program, installed where it is not there yet."""
    program = TOOLS / "node_modules" / ".bin" / "lighthouse"
    if not program.exists():
        TOOLS.mkdir(parents=True, exist_ok=True)
        subprocess.run(["npm", "install", "--no-audit", "--no-fund", "--silent", f"lighthouse@{VERSION}"], cwd=TOOLS, check=True)
    return program


def report(program: Path, address: str) -> dict[str, object]:
    """What Lighthouse says of one page, as its JSON."""
    command = [str(program), address, "--quiet", "--output=json", f"--only-categories={','.join(CATEGORIES)}"]
    command += ["--chrome-flags=--headless=new --no-sandbox --disable-gpu"]
    chromium = os.environ.get("CHROME_PATH") or shutil.which("chromium") or "chromium"
    done = subprocess.run(command, check=True, capture_output=True, text=True, env={**os.environ, "CHROME_PATH": chromium})
    return json.loads(done.stdout)  # type: ignore[no-any-return]


def main() -> None:
    """One line a page: the four scores, the layout shift, and what keeps a score below its mark."""
    site = Path(sys.argv[1]) if len(sys.argv) > 1 else PROJECT / "build" / "site"
    program = lighthouse()
    with served(site) as address:
        for path in PAGES:
            said = report(program, f"{address}/{path}")
            scores = " ".join(f"{name} {round(100 * (said['categories'][name]['score'] or 0))}" for name in CATEGORIES)  # type: ignore[index]
            audits = said["audits"]
            shift, blocked, largest = (
                audits[each]["displayValue"]  # type: ignore[index]
                for each in ("cumulative-layout-shift", "total-blocking-time", "largest-contentful-paint")
            )
            print(f"{path}: {scores}; shift {shift}, blocked {blocked}, largest paint {largest}", flush=True)
            weighed = {ref["id"] for name in CATEGORIES for ref in said["categories"][name]["auditRefs"] if ref["weight"]}  # type: ignore[index]
            for id in sorted(weighed):
                audit = audits[id]  # type: ignore[index]
                if audit["score"] is not None and audit["score"] < (0.9 if audit["scoreDisplayMode"] == "numeric" else 1):
                    print(f"  {id}: {audit['title']} {audit.get('displayValue', '')}")


if __name__ == "__main__":
    main()
