"""A QR code as filled rectangles (ISO/IEC 18004), so that it prints as sharp as the type."""

from __future__ import annotations

from keytool.card.ink import Block, Panel

MODULE_MM = 0.45
"""One module; a phone at a hand's breadth reads it."""


def qr_block(address: str) -> Block:
    """The code for `address`, as wide as it is high. Keep four modules clear all round it, as the standard asks."""
    import segno

    rows = [bytes(row) for row in segno.make(address, error="m", micro=False, boost_error=False).matrix]
    panels = [
        Panel(start * MODULE_MM, y * MODULE_MM, length * MODULE_MM, MODULE_MM) for y, row in enumerate(rows) for start, length in _dark(row)
    ]
    return Block(len(rows) * MODULE_MM, tuple(panels))


def _dark(row: bytes) -> list[tuple[int, int]]:
    """Runs of dark modules in a row as (start, length)."""
    runs: list[tuple[int, int]] = []
    for x, module in enumerate(row):
        if not module:
            continue
        if runs and sum(runs[-1]) == x:
            runs[-1] = (runs[-1][0], runs[-1][1] + 1)
        else:
            runs.append((x, 1))
    return runs
