"""What the entries rest on: which have a described specimen in the tests, from which source, and whether a value was read there.

Run: python benchmarks/evidence.py [COMMIT]. With a commit, entries and cases are also set against those that stood there, so
that anybody can count what came since. A case stands for the entry it `ends-in`, or the `entry` it says it is. Asserts nothing.
"""

from __future__ import annotations

import subprocess
import sys
from collections import Counter
from pathlib import Path
from typing import Any

import yaml

HOME = Path(__file__).parents[1]
CASES = "tests/cases"
ENTRIES = "keydata/entries"


def main() -> None:
    """Cases by file, then entries with a case from a source, and those without any, by theme."""
    commit = sys.argv[1] if len(sys.argv) > 1 else ""
    themes = {path.stem: path.parent.name for path in (HOME / ENTRIES).rglob("*.yaml")}
    former = {Path(name).stem for name in git("ls-tree", "-r", "--name-only", commit, ENTRIES).splitlines()} if commit else set()
    stand: dict[str, list[dict[str, Any]]] = {}
    print(f"{'file':28} {'cases':>6} {'read':>6}" + (f" {'since':>6} {'read':>6}" if commit else ""))
    total: Counter[str] = Counter()
    for path in sorted((HOME / CASES).glob("*.yaml")):
        now = described(path.read_text("utf-8"))
        if not now:
            continue
        old = {named(case) for case in described(git("show", f"{commit}:{CASES}/{path.name}"))} if commit else set()
        new = [case for case in now if named(case) not in old]
        row = Counter(cases=len(now), read=sum(map(read, now)), since=len(new), since_read=sum(map(read, new)))
        total += row
        show(path.stem, row, bool(commit))
        for case in now:
            stand.setdefault(case.get("ends-in") or case.get("entry") or "", []).append(case)
    show("all", total, bool(commit))
    sourced = {id for id, cases in stand.items() if id in themes and any(case.get("source") for case in cases)}
    print(f"\n{len(themes)} entries, {len(sourced)} with a case from a source.")
    if commit:
        came = set(themes) - former
        print(f"{len(came)} entries came since {commit}, {len(came & sourced)} of them with a case from a source:")
        for id in sorted(came & sourced):
            print(f"  {id:26} {', '.join(sorted({case['source'] for case in stand[id] if case.get('source')}))}")
    print("\nWithout a case from a source, by theme:")
    for theme in sorted(set(themes.values())):
        print(f"  {theme}: {', '.join(sorted(id for id in themes if themes[id] == theme and id not in sourced))}")


def described(text: str) -> list[dict[str, Any]]:
    """The cases of a file of published descriptions; none of any other file."""
    data = yaml.safe_load(text) if "\nkey: " in f"\n{text}" else None
    return list(data["cases"]) if data else []


def named(case: dict[str, Any]) -> tuple[str, str]:
    """What a case is known by: its taxon and its source."""
    return case["taxon"], case.get("source", "")


def read(case: dict[str, Any]) -> bool:
    """Whether at least one of its observations was read in its source."""
    return any(what["basis"] == "seen" for what in case["observations"].values())


def show(name: str, row: Counter[str], since: bool) -> None:
    """One line of the table."""
    print(f"{name:28} {row['cases']:6} {row['read']:6}" + (f" {row['since']:6} {row['since_read']:6}" if since else ""))


def git(*words: str) -> str:
    """What git prints; nothing where there is no such file."""
    return subprocess.run(["git", *words], cwd=HOME, capture_output=True, text=True, check=False).stdout


if __name__ == "__main__":
    main()
