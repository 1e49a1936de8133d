"""The observations of a sheet as a table of Darwin Core occurrences: one row for each line looked for in a sample, present or absent.

Spelling of the terms as in the TDWG list of Simple Darwin Core terms (read). A quantity always comes with its type, and a size
of sample with its unit; an absent row says how hard it was looked for.
"""

from __future__ import annotations

import csv
import io

from keytool.bench.results import LineResult, results
from keytool.bench.sheet import OTHER, Record, Sample
from keytool.bench.sheet_csv import safe
from keytool.library.model import Library

TERMS = (
    "occurrenceID",
    "basisOfRecord",
    "occurrenceStatus",
    "eventID",
    "eventDate",
    "habitat",
    "locality",
    "verbatimDepth",
    "samplingProtocol",
    "sampleSizeValue",
    "sampleSizeUnit",
    "samplingEffort",
    "recordedBy",
    "individualCount",
    "organismQuantity",
    "organismQuantityType",
    "vernacularName",
    "scientificName",
    "verbatimIdentification",
    "identificationRemarks",
    "occurrenceRemarks",
)


def as_table(record: Record, library: Library) -> str:
    """The table as CSV (RFC 4180)."""
    out = io.StringIO()
    writer = csv.writer(out, lineterminator="\r\n")
    writer.writerow(TERMS)
    for n, sample in enumerate(record.samples, 1):
        found = results(library, sample)
        for each in found.lines:
            writer.writerow([safe(cell) for cell in _row(library, sample, each, n, found.slip.unit)])
    return out.getvalue()


def _row(library: Library, sample: Sample, each: LineResult, n: int, unit: str) -> list[str]:
    line = library.bench.tally.get(each.id)
    entry = library.entries.get(line.within[0] if line and len(line.within) == 1 and not line.feeding else each.id)
    units = "whole drops at low power" if each.at == "drop" else "fields at high power"
    setup = sample.setup
    protocol = "live wet mount, brightfield, no stain"
    if setup.soil and setup.total_ml:
        protocol += f"; {setup.soil:g} {setup.soil_unit} soil made up to {setup.total_ml:g} mL"
    quantity = each.per_unit if each.per_unit else None
    remarks = "An invented sample, for demonstration." if sample.invented else ""
    return [
        f"{sample.name or n}/{each.at}/{each.id}",
        "HumanObservation",
        "present" if each.mean.total else "absent",
        sample.name or str(n),
        sample.looked or sample.taken,
        sample.kind,
        sample.place,
        f"{sample.depth_cm} cm" if sample.depth_cm else "",
        protocol,
        f"{each.searched_ml:.6g}" if each.searched_ml else str(each.mean.fields),
        "millilitre" if each.searched_ml else units,
        f"{each.mean.fields} {units}",
        sample.by,
        str(each.mean.total),
        f"{quantity.value:.6g}" if quantity else f"{each.mean.per_field.value:.6g}",
        f"individuals per {_soil(unit)}" if quantity else f"individuals per {'drop' if each.at == 'drop' else 'field'}",
        each.label,
        entry.scientific if entry else "",
        each.id.removeprefix(OTHER),
        "group as told at the microscope, without stain",
        " ".join(part for part in (remarks, _limits(each)) if part),
    ]


def _soil(unit: str) -> str:
    return {"g": "gram soil as weighed", "mL": "millilitre soil", "g dry": "gram dry soil"}[unit]


def _limits(each: LineResult) -> str:
    limits = each.per_unit or each.mean.per_field
    return f"95 % limits of counting {limits.low:.6g} to {limits.high:.6g}."
