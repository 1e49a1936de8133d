"""`wetmount take`: take over what somebody made with the form of the site."""

from __future__ import annotations

from pathlib import Path

import click


@click.command("take", short_help="Take over what the form of the site made.")
@click.argument("file", type=click.Path(path_type=Path, dir_okay=False))
@click.option("--dry-run", "only_look", is_flag=True, help="Only say what would change.")
@click.option("--replace", is_flag=True, help="Write over an entry, or a set of look-alikes, of that id.")
@click.option("--even-so", is_flag=True, help="Write it even where a key does not end rightly with it yet.")
@click.option("--yes", is_flag=True, help="Ask nothing: write it if nothing is wrong with it.")
@click.pass_obj
def take_command(named: Path | None, file: Path, only_look: bool, replace: bool, even_so: bool, yes: bool) -> None:
    """Take over FILE, as the form of the site gave it: an entry, a set of look-alikes, a state or a couplet.

    A couplet keeps the words it was sent in. First it is tried on a copy, and every line that would
    change is shown; then you are asked, and all of it is written or nothing.
    """
    from keytool.cli.new_talk import adding_to, talk_of
    from keytool.contribute.adding import Refused
    from keytool.contribute.draft import entry_name
    from keytool.contribute.field_validator import taken
    from keytool.contribute.sent import NotTaken, sent

    try:
        data = file.read_bytes()
    except OSError as error:
        raise click.UsageError(f"'{file}' cannot be read: {error.strerror}.") from None
    talk = talk_of({}, yes=yes or only_look)
    with adding_to(named, talk, even_so=even_so) as adding:
        try:
            found = sent(adding.loaded, file.name, data)
        except NotTaken as error:
            raise Refused(f"{error}\nNothing was written.") from None
        bench, id, page = adding.bench, str(found.raw.get("id", "")), ""
        if found.kind:
            name = entry_name(found.raw) if found.kind == "entry" else f"keydata/look-alikes/{id}.yaml"
            standing = taken(adding.loaded).get(id)
            if standing and not (replace and standing == name):
                raise Refused(
                    f"'{id}' is the id of {standing} already. "
                    + ("Say --replace to write over it, or change" if standing == name else "Change")
                    + f" 'id:' in {file.name}.\nNothing was written."
                )
            bench.new_file(name, found.text, found.raw)
            page = f"entries/{id}.html" if found.kind == "entry" else f"look-alikes/{id}.html"
        if found.state:
            bench.new_state(found.state.character, found.state.id, found.state.raw, found.state.entries, found.state.leads)
        for couplet in found.couplets:
            bench.new_couplet(couplet)
        adding.finish_taken(id if found.kind == "entry" else "", page, only_look=only_look)
