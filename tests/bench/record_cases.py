"""Writes `tests/cases/counts.json`: sheets, and what they give, for Python and script alike. Run as `python -m tests.bench.record_cases`."""

from __future__ import annotations

import json
import random
from pathlib import Path
from typing import Any

from keytool.bench.results_json import record_results
from keytool.bench.sheet_json import as_data, from_data
from keytool.library import load, root

CASES = Path(__file__).parents[1] / "cases" / "counts.json"


def sheets(demo: Any) -> list[Any]:
    """The demonstration, and sheets with every kind of gap: no set-up, no drops, none seen, clumps, spoons and dry grams, things in no line."""
    chance = random.Random(7)
    base = {
        "field-number-mm": 20,
        "low": 4,
        "high": 40,
        "soil": 2,
        "soil-unit": "mL",
        "total-ml": 20,
        "drop-ml": 0.04,
        "slip-width-mm": 22,
        "slip-length-mm": 50,
    }

    def one(name: str, setup: dict[str, Any], drops: list[Any], fields: list[Any], at: tuple[list[str], list[str]]) -> dict[str, Any]:
        slides = [{"name": str(n + 1), "drop": each, "fields": fields if n == 0 else []} for n, each in enumerate(drops or [None])]
        return {"name": name, "invented": True, "setup": setup, "at-drop": at[0], "at-field": at[1], "slides": slides}

    clumped = [{"flagellate": chance.choice([0, 0, 0, 1, 9, 14]), "hypha": 1} for _ in range(16)]
    even = [{"flagellate": 2, "substantial-hypha": 1} for _ in range(9)]
    lists = (["nematode", "ciliate", "plectus", "other:glass ball"], ["flagellate", "hypha", "substantial-hypha", "ciliate"])
    return [
        demo,
        {
            "wetmount-count": 1,
            "samples": [one("clumped", base, [{"nematode": 1}, {"plectus": 2, "ciliate": 30}, {"other:glass ball": 1}], clumped, lists)],
        },
        {
            "wetmount-count": 1,
            "samples": [
                one("dry grams", {**base, "bulk-density": 1.1, "moisture": 0.25}, [], even, lists),
                one("later", {**base, "bulk-density": 1.2, "moisture": 0.1, "total-ml": 10}, [], clumped, lists),
            ],
        },
        {
            "wetmount-count": 1,
            "samples": [one("no set-up", {}, [{}, {"mononchus": 1}], [{}], lists), one("none", base, [{}], [{}] * 12, lists)],
        },
        {"wetmount-count": 1, "samples": [one("nothing yet", base, [], [], lists)]},
    ]


def main() -> None:
    """Writes the file."""
    library = load(root()).library
    cases = []
    for each in sheets(library.bench.demo):
        record = from_data(each, library)
        cases.append({"sheet": as_data(record), "gives": record_results(library, record)})
    CASES.write_text(json.dumps(cases, ensure_ascii=False, indent=0) + "\n", "utf-8")


if __name__ == "__main__":
    main()
