"""Flowing blocks, in reading order, into columns of one height: the plates as large as the fullest column allows."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from itertools import pairwise

from keytool.card.ink import Block, Moved, Picture, Piece, marks
from keytool.card.plates import largest

BLOCK_GAP = 2.2
MOST_SPREAD = 5.0
"""How much wider the gap between two blocks may grow, mm."""
PLATES = (12.5, 14.5, 17.0, 20.0, 23.5, 27.5, 32.0, 38.0, 45.0)
"""Sizes tried for the largest plate of a couplet, mm (`plates.largest`); below the first a mouth cannot be made out."""
MOST_UNLIKE = 2.6
"""How much larger plates may be in one column than in another."""

Measure = Callable[[int, float], Block | None]
"""A block by its number and the size of its largest plate; None where it cannot be set."""


@dataclass(frozen=True, slots=True)
class Column:
    """One filled column: pieces placed from its top left corner, and how far down they reach."""

    pieces: tuple[Piece, ...]
    filled: float
    blocks: tuple[Block, ...]


def columns(measure: Measure, count: int, height: float, most: int) -> list[Column] | None:
    """`count` blocks in at most `most` columns `height` mm high, or None if they do not fit with the smallest plates."""
    if sum(block.height if (block := measure(number, PLATES[0])) else height for number in range(count)) > height * most:
        return None
    cuts = _cuts(measure, count, height, most)
    if cuts is None:
        return None
    spans = list(pairwise(cuts))
    least = min(_largest(measure, start, end, height) for start, end in spans)
    limit = MOST_UNLIKE * PLATES[least]
    return [_column(measure, start, end, height, limit) for start, end in spans]


def mean_plate(made: Sequence[Column]) -> float:
    """How large the largest plate of a couplet is, on average, in mm; infinite where nothing is drawn."""
    sizes = [
        largest([each.drawing for each in pictures]) * pictures[0].mm_per_um
        for column in made
        for block in column.blocks
        if (pictures := [mark for mark in marks(block.pieces) if isinstance(mark, Picture)])
    ]
    return sum(sizes) / len(sizes) if sizes else float("inf")


def _cuts(measure: Measure, count: int, height: float, most: int) -> list[int] | None:
    """Where to cut the blocks: the smallest plates as large as can be, then the empty ends of columns as short and even."""
    nothing = (-1, 0.0)
    best: list[dict[int, tuple[tuple[int, float], list[int]]]] = [{0: ((len(PLATES), 0.0), [0])}]
    for _ in range(most):
        reached: dict[int, tuple[tuple[int, float], list[int]]] = {}
        for start, (score, cuts) in best[-1].items():
            for end in range(start + 1, count + 1):
                size = _largest(measure, start, end, height)
                if size < 0:
                    break
                empty = height - _height(measure, start, end, PLATES[size])
                tried = (min(score[0], size), score[1] - empty ** 2)
                if tried > reached.get(end, (nothing, []))[0]:
                    reached[end] = (tried, [*cuts, end])
        best.append(reached)
    ends = [each[count] for each in best if count in each]
    return max(ends, key=lambda each: each[0])[1] if ends else None


def _largest(measure: Measure, start: int, end: int, height: float) -> int:
    """Index of the largest plate height with which these blocks fit one column, or -1."""
    for index in range(len(PLATES) - 1, -1, -1):
        if _height(measure, start, end, PLATES[index]) <= height:
            return index
    return -1


def _height(measure: Measure, start: int, end: int, plate: float) -> float:
    total = (end - start - 1) * BLOCK_GAP
    for number in range(start, end):
        block = measure(number, plate)
        if block is None:
            return float("inf")
        total += block.height
    return total


def _column(measure: Measure, start: int, end: int, height: float, limit: float) -> Column:
    """The blocks with plates grown into the free space, and what is then left shared out between them."""
    plate = min(limit, PLATES[_largest(measure, start, end, height)])
    while plate + 0.5 <= limit and _height(measure, start, end, plate + 0.5) <= height:
        plate += 0.5
    blocks = [block for number in range(start, end) if (block := measure(number, plate))]
    spare = height - _height(measure, start, end, plate)
    gap = BLOCK_GAP + min(MOST_SPREAD, spare / max(1, len(blocks) - 1))
    pieces: list[Piece] = []
    y = 0.0
    for block in blocks:
        pieces.append(Moved(0, y, block.pieces))
        y += block.height + gap
    return Column(tuple(pieces), y - gap, tuple(blocks))
