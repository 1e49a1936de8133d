"""`wetmount check`: everything that is wrong with the library, in one run, and every proof."""

from __future__ import annotations

import json
import sys
from pathlib import Path
from typing import TYPE_CHECKING

import click

if TYPE_CHECKING:
    from keytool.library import Finding, Loaded


@click.command("check", short_help="Check the library and prove its keys.")
@click.option("--format", "form", type=click.Choice(["text", "json"]), default="text", help="How to report.")
@click.option(
    "--report", is_flag=True, help="Say of every key how good it is: questions against the bound, what misleads, what is hardest to part."
)
@click.pass_obj
def check_command(named: Path | None, form: str, report: bool) -> None:
    """Check every file of the library and prove every key.

    Exit code 0: clean. 1: there are problems. 2: the command was not understood.
    """
    from keytool.cli.opening import where
    from keytool.cli.terminal import Terminal
    from keytool.library import Severity, load
    from keytool.library.disk_cache import recall, remember
    from keytool.library.report import as_json, as_text

    terminal, root = Terminal(), where(named)
    key = _key(root)
    known = recall("check", key)
    if not known:
        remember("check", key, known := _looked(load(root)))
    findings, counts, costs = known
    if form == "json":
        terminal.raw(json.dumps({"counts": counts, "findings": json.loads(as_json(findings))}, ensure_ascii=False, indent=2))
    else:
        if findings:
            terminal.raw(as_text(findings))
        if counts:
            terminal.say(", ".join(f"{number} {name}" for name, number in counts.items()) + ".")
            if not any(each.severity is Severity.PROBLEM for each in findings):
                if report:
                    _quality(load(root), terminal)
                else:
                    for line in costs:
                        terminal.say(line)
    sys.exit(1 if any(each.severity is Severity.PROBLEM for each in findings) else 0)


def _key(root: Path) -> str:
    """What the findings hang on: every file of the library, which of them are links, the whole code, and the day (for dates)."""
    import datetime

    import keytool
    from keytool.library.disk_cache import key_of

    links = sorted(str(path) for path in (root / "keydata").rglob("*") if path.is_symlink())
    return key_of([root / "keydata", Path(keytool.__file__).parent], "check", datetime.date.today().isoformat(), *links)


def _looked(loaded: Loaded) -> tuple[list[Finding], dict[str, int], list[str]]:
    """Every finding, the counts, and what each key costs; counts only where the files are right, costs only where the proofs hold too."""
    from keytool.library import Severity
    from keytool.library.checks import run

    def is_right() -> bool:
        return not any(each.severity is Severity.PROBLEM for each in findings)

    findings = [*loaded.findings, *run(loaded)]
    counts: dict[str, int] = {}
    if is_right():
        counts, more = _proofs(loaded)
        findings += [*more, *_pictures(loaded)]
    return findings, counts, _costs(loaded) if is_right() else []


def _proofs(loaded: Loaded) -> tuple[dict[str, int], list[Finding]]:
    from keytool.identify import prove
    from keytool.identify.findings import findings

    library = loaded.library
    proofs = [prove(library, key) for key in library.keys.values()]
    counts = {
        "keys": len(library.keys),
        "couplets": sum(len(key.couplets) for key in library.keys.values()),
        "entries": len(library.entries),
        "characters": len(library.characters),
        "sources": len(library.sources),
        "terms": len(library.terms),
        "proofs (an entry proved in a key)": sum(proof.entries for proof in proofs),
        "ways walked": sum(proof.combinations for proof in proofs),
    }
    return counts, [each for proof in proofs for each in findings(loaded, proof)]


def _pictures(loaded: Loaded) -> list[Finding]:
    """What is wrong with the drawings, and which computed pictures are stale."""
    from keytool.figures.findings import findings
    from keytool.optics.kept import findings as of_eyepiece

    wrong = list(findings(loaded))
    return wrong or list(of_eyepiece(loaded))


def _quality(loaded: Loaded, terminal: object) -> None:
    """How good each key is, the dearest against its bound first."""
    from keytool.cli.terminal import Terminal
    from keytool.identify import compiled
    from keytool.identify.quality import best_order, quality
    from keytool.library.wording import name_of, plain

    assert isinstance(terminal, Terminal)
    model = compiled(loaded.library)
    for each in sorted((quality(model, key) for key in model.keys), key=lambda each: -each.ratio):
        key = loaded.library.keys[each.key]
        terminal.say()
        terminal.say(
            terminal.bold(f"{key.title}: {each.questions:.1f} questions on average, {each.ratio:.1f} x the bound of {each.bound:.1f}")
        )
        best, exact = best_order(model, each.key)
        how = "every order tried" if exact else "asking first what tells most"
        terminal.say(f"From the same couplets in another order: {best:.1f} ({how})", indent=2)
        couplet = key.couplets[each.worst]
        terminal.say(
            f"Most is lost at {couplet.number} “{plain(loaded.library, couplet.asks)}”: {100 * each.lost:.1f} % of identifications",
            indent=2,
        )
        if each.pair[0]:
            pair = " and ".join(name_of(loaded.library, id) for id in each.pair)
            terminal.say(f"Hardest to part: {pair}; their looks overlap to {100 * each.alike:.0f} %", indent=2)


def _costs(loaded: Loaded) -> list[str]:
    from keytool.identify import cost

    costs = [(key.title, cost(loaded.library, key)) for key in loaded.library.keys.values()]
    return [
        f"{title}: {what.questions:.1f} questions on average, {what.most} at most "
        f"(no key with such couplets can do with fewer than {what.least:.1f})."
        for title, what in costs
    ]
