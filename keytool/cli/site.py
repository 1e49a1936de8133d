"""`wetmount site` and `wetmount serve`: the site, built or served while you edit."""

from __future__ import annotations

from pathlib import Path

import click


@click.command("site", short_help="Build the site into a folder.")
@click.option("-o", "--output", type=click.Path(path_type=Path, file_okay=False), default=Path("build/site"), show_default=True,
              help="The folder to write. An older site there is replaced only when the new one is whole.")
@click.option("--sources", is_flag=True, help="Write the pages as Markdown instead, for another site builder.")
@click.pass_obj
def site_command(named: Path | None, output: Path, sources: bool) -> None:
    """Build the site. It can be opened from the folder, from a USB stick or from a web server."""
    from keytool.cli.opening import opened, where
    from keytool.cli.terminal import Terminal
    from keytool.pages import write
    from keytool.pages.build import build_site

    library = opened(named).library
    if sources:
        write(library, output)
    else:
        build_site(where(named), output)
    Terminal().say(f"The site is in {output}" + ("." if sources else f"; open {output / 'index.html'} in a browser."))


@click.command("serve", short_help="Show the site on this machine and reload it as files change.")
@click.option("--port", default=8000, show_default=True, help="The port to serve on.")
@click.pass_obj
def serve_command(named: Path | None, port: int) -> None:
    """Serve the site on this machine; a change of a YAML file reloads it. Stop with Ctrl-C."""
    from keytool.cli.opening import opened, where
    from keytool.pages.build import serve

    opened(named)
    serve(where(named), port)
