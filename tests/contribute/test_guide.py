"""The guide says what is: its example passes, every field and every option of a contributor's command stands in it."""

from __future__ import annotations

import json
import re
import shutil
from collections.abc import Iterator
from pathlib import Path

import click
import pytest
from check_jsonschema import main as check_jsonschema
from click.testing import CliRunner

from keytool.cli import COMMANDS, main
from keytool.cli.card import card_command
from keytool.contribute.draft import modeline
from keytool.contribute.page_slots import EXAMPLE, slots
from keytool.contribute.reference import fields, reference, shared_fields
from keytool.contribute.schemas import bundled, kinds, schema_files
from keytool.library import Loaded, load
from keytool.library.records import RECORDS
from tests.conftest import KEYDATA, copy_mini, everything_found
from tests.contribute.helping import COMMANDS as CONTRIBUTING

OURS = {**CONTRIBUTING, "card": card_command}
"""The commands whose options the guide documents one by one."""
PAGES = Path(__file__).parents[2] / "site/pages"
GUIDE = "".join(path.read_text("utf-8") for path in sorted((PAGES / "contribute").glob("*.md")))


def test_the_example_is_an_entry_that_passes_every_check_and_proof(tmp_path: Path) -> None:
    shutil.copytree(KEYDATA, tmp_path / "keydata")
    shutil.copy(PAGES / EXAMPLE, tmp_path / "keydata/entries/nematodes/tarn-end-worm.yaml")
    assert [each for each in everything_found(load(tmp_path)) if each.severity.value == "problem"] == []


def test_the_example_uses_every_field_that_most_entries_use(loaded: Loaded) -> None:
    text = (PAGES / EXAMPLE).read_text("utf-8")
    entries = [file.data for (kind, _), file in loaded.files.by_id.items() if kind == "entry"]
    for field in loaded.schemas.named()["entry.schema.json"]["properties"]:
        if sum(field in each for each in entries) > len(entries) / 2 and field not in ("mistaken-for", "figure"):
            assert re.search(rf"^{field}:", text, re.MULTILINE), field


def test_every_field_of_every_schema_is_described_and_stands_in_the_reference(loaded: Loaded) -> None:
    text = reference(loaded)
    for kind in kinds(loaded):
        for field in fields(loaded, kind):
            assert len(field.about) > 8, (kind, field.path)
            assert f"<code>{field.path}</code>" in text
        assert f'id="fields-{kind}"' in text
    assert all(field.about for field in shared_fields(loaded))
    assert [each.kind for each in RECORDS] and {each.kind for each in RECORDS} == set(kinds(loaded))


def test_the_reference_finds_every_property_a_schema_names(loaded: Loaded) -> None:
    def named(schema: object) -> Iterator[str]:
        if isinstance(schema, dict):
            for name, each in schema.get("properties", {}).items():
                if isinstance(each, dict) and "const" not in each and "not" not in each:
                    yield name
            for each in schema.values():
                yield from named(each)
        elif isinstance(schema, list):
            for each in schema:
                yield from named(each)

    inside_shared = {name for field in shared_fields(loaded) for name in field.path.split(".")}
    for kind in kinds(loaded):
        told = {name for field in fields(loaded, kind) for name in field.path.split(".")} | inside_shared
        assert set(named(bundled(loaded, kind))) <= told, kind


@pytest.mark.parametrize("command", sorted({*COMMANDS, *OURS}))
def test_every_command_stands_in_the_guide(command: str) -> None:
    assert f"`wetmount {command}" in GUIDE


def _options(command: click.Command, name: str) -> Iterator[tuple[str, str]]:
    if isinstance(command, click.Group):
        for inner, each in command.commands.items():
            yield from _options(each, f"{name} {inner}")
    else:
        for parameter in command.params:
            for option in (*parameter.opts, *parameter.secondary_opts) if isinstance(parameter, click.Option) else ():
                yield name, option


@pytest.mark.parametrize(("command", "option"), [each for name, command in OURS.items() for each in _options(command, name)])
def test_every_option_of_a_contributors_command_stands_in_its_part_of_the_guide(command: str, option: str) -> None:
    heading = "Your editor" if command == "new editor-schemas" else f"wetmount {command}"
    text = (PAGES / "contribute/commands.md").read_text("utf-8")
    part = text.split(f"## {heading}\n", 1)[1].split("\n## ", 1)[0]
    assert re.search(rf"`[^`]*{re.escape(option)}\b", part), part


@pytest.mark.parametrize("command", [each for each in COMMANDS if each not in OURS])
def test_every_option_of_every_other_command_stands_beside_it(command: str) -> None:
    line = next(line for line in GUIDE.splitlines() if line.startswith(f"| `wetmount {command}"))
    found = main.get_command(click.Context(main), command)
    wanted = list(found.commands) if isinstance(found, click.Group) else [option for _, option in _options(found, command)]
    for each in wanted:
        assert re.search(rf"`[^`]*{re.escape(each)}\b", line), (each, line)


def test_what_a_newcomer_reads_takes_less_than_ten_minutes() -> None:
    """At 200 words a minute (a usual figure for reading, from memory): what the form asks for, and what the command line asks for."""

    def count(*paths: Path) -> int:
        return sum(len(path.read_text("utf-8").split()) for path in paths)

    contribute, top = PAGES / "contribute", PAGES.parents[1]
    assert count(*(contribute / f"{name}.md" for name in ("index", "form", "judgement")), contribute / "example-entry.yaml") < 2000
    contributing = (top / "DEVELOPERS.md").read_text("utf-8").split("## Adding something", 1)[1]
    assert count(top / "README.md") + len(contributing.split("\n## ", 1)[0].split()) < 2000


def test_no_option_is_documented_that_does_not_exist() -> None:
    every = {**{name: main.get_command(click.Context(main), name) for name in COMMANDS}, **OURS}
    known = {option for name, command in every.items() for _, option in _options(command, name)} | {"--help", "--library", "--version"}
    named = set(re.findall(r"`(--[a-z-]+)", (PAGES / "contribute/commands.md").read_text("utf-8")))
    assert named <= known


def test_the_hook_and_the_job_hold_the_files_of_the_copy_to_the_checks(tmp_path: Path) -> None:
    """The lines of the guide are run as they stand, in a repository of their own, right and broken."""
    import os
    import subprocess
    import sys

    import yaml

    blocks = [yaml.safe_load(each) for each in re.findall(r"```yaml\n(.*?)```", GUIDE, re.DOTALL)]
    hook = next(each for each in blocks if "repos" in each)["repos"][0]["hooks"][0]
    steps = [each["run"].removeprefix(".venv/bin/") for each in next(each for each in blocks if "steps" in each)["steps"]][1:]
    root = copy_mini(tmp_path / "copy")
    git = ["git", "-C", str(root), "-c", "user.name=x", "-c", "user.email=x@example.org"]
    for line in (["init", "-q"], ["add", "."], ["commit", "-q", "-m", "x"], ["update-ref", "refs/remotes/origin/main", "HEAD"]):
        subprocess.run([*git, *line], check=True)

    def rc(line: str) -> int:
        words = f"{sys.executable} -m keytool.cli" + line.removeprefix("wetmount")
        environment = {**os.environ, "PYTHONPATH": str(KEYDATA.parent)}
        return subprocess.run(words, shell=True, cwd=root, env=environment, capture_output=True, check=False).returncode

    assert [rc(line) for line in (hook["entry"], *steps)] == [0, 0, 0]
    assert (root / "impact.md").read_text("utf-8").startswith("# What this changes, against origin/main")
    assert re.search(hook["files"], "keydata/entries/debris/coat-button.yaml")
    path = root / "keydata/entries/debris/coat-button.yaml"
    path.write_text(path.read_text("utf-8").replace("kind: object", "kind: objet"), "utf-8")
    assert rc(hook["entry"]) == 1 and rc(steps[0]) == 1


def test_published_schemas_stand_alone_and_accept_the_library(loaded: Loaded, tmp_path: Path) -> None:
    for name, data in schema_files(loaded).items():
        (tmp_path / name).write_bytes(data)
        schema = json.loads(data)
        assert all(ref.startswith("#/$defs/") for ref in re.findall(r'"\$ref": "([^"]+)"', data.decode())), name
        assert "x-say" not in data.decode()
        assert schema["title"]
    entries = [str(path) for path in sorted((KEYDATA / "entries").rglob("*.yaml"))][:40]
    result = CliRunner().invoke(check_jsonschema, ["--schemafile", str(tmp_path / "entry.schema.json"), *entries])
    assert result.exit_code == 0, result.output
    keys = [str(path) for path in (KEYDATA / "keys").glob("*.yaml")]
    assert CliRunner().invoke(check_jsonschema, ["--schemafile", str(tmp_path / "key.schema.json"), *keys]).exit_code == 0


def test_a_published_schema_refuses_what_the_check_refuses(loaded: Loaded, tmp_path: Path) -> None:
    (tmp_path / "entry.schema.json").write_bytes(schema_files(loaded)["entry.schema.json"])
    (tmp_path / "x.yaml").write_text((PAGES / EXAMPLE).read_text("utf-8").replace("kind: genus", "kind: genius"), "utf-8")
    result = CliRunner().invoke(check_jsonschema, ["--schemafile", str(tmp_path / "entry.schema.json"), str(tmp_path / "x.yaml")])
    assert result.exit_code == 1
    assert "genius" in result.output


def test_closed_lists_carry_their_labels_for_editors(loaded: Loaded) -> None:
    kind = bundled(loaded, "entry")["$defs"]["words.entry-kind"]
    assert len(kind["enum"]) == len(kind["enumDescriptions"])


def test_the_modeline_leads_to_the_schemas_from_any_depth() -> None:
    for name in ("keydata/entries/dots/x.yaml", "keydata/look-alikes/x.yaml"):
        path = modeline("entry", name).split("$schema=")[1].strip()
        assert (Path("/root") / name).parent.joinpath(path).resolve() == Path("/root/build/schemas/entry.schema.json")


def test_every_slot_of_the_guide_is_filled(loaded: Loaded) -> None:
    wanted = set(re.findall(r"<!-- (contribute-[a-z]+) -->", GUIDE))
    filled = slots(loaded, PAGES)
    assert set(filled) == wanted
    assert all(text.startswith("<") for text in filled.values())
    assert "Ilse Okafor" in filled["contribute-example"]
