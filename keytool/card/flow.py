"""Flowing blocks, in reading order, into columns of given heights: the plates as large as the fullest column allows."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from functools import cache
from itertools import pairwise

from keytool.card.ink import Block, Moved, Picture, Piece, marks
from keytool.card.plates import largest

BLOCK_GAP = 2.2
MOST_SPREAD = 5.0
"""How much wider the gap between two blocks may grow, mm."""
PLATES = (12.5, 14.5, 17.0, 20.0, 23.5, 27.5, 32.0, 38.0, 45.0)
"""Sizes tried for the largest plate of a couplet, mm (`plates.largest`); below the first a mouth cannot be made out at arm's length."""
NEAR_PLATES = (8.0, 10.0, *PLATES)
"""The same for what is held in the hand."""
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


def columns(measure: Measure, count: int, heights: Sequence[float], plates: Sequence[float] = PLATES) -> list[Column] | None:
    """`count` blocks in columns so high (mm), the last of which may stay empty; None if they do not fit with the first of `plates`."""
    if sum(block.height if (block := measure(number, plates[0])) else max(heights) for number in range(count)) > sum(heights):
        return None
    sized = cache(lambda start, end, height: _largest(measure, start, end, height, plates))
    cuts = _cuts(measure, sized, count, heights, plates)
    if cuts is None:
        return None
    spans = [(start, end, height) for (start, end), height in zip(pairwise(cuts), heights, strict=False)]
    filled = [span for span in spans if span[0] < span[1]]
    limit = MOST_UNLIKE * min(plates[sized(*span)] for span in filled)
    return [_column(measure, *span, plates[sized(*span)], limit) if span in filled else Column((), 0.0, ()) for span in spans]


def mean_plate(made: Sequence[Column]) -> float:
    """How large the largest plate of a couplet is, on average, in mm; infinite where nothing is drawn."""
    sizes = [
        max(largest([each.drawing]) * each.mm_per_um for each in pictures)
        for column in made
        for block in column.blocks
        if (pictures := [mark for mark in marks(block.pieces) if isinstance(mark, Picture)])
    ]
    return sum(sizes) / len(sizes) if sizes else float("inf")


def _cuts(
    measure: Measure, sized: Callable[[int, int, float], int], count: int, heights: Sequence[float], plates: Sequence[float]
) -> list[int] | None:
    """Where to cut the blocks: the smallest plates as large as can be, then the empty ends of columns as short and even.

    A column may stay empty where its first block is too high for it, but not for a later one.
    """
    nothing = (-1, 0.0)
    best: list[dict[int, tuple[tuple[int, float], list[int]]]] = [{0: ((len(plates), 0.0), [0])}]
    for height in heights:
        reached: dict[int, tuple[tuple[int, float], list[int]]] = {}
        for start, (score, cuts) in best[-1].items():
            if start < count and sized(start, start + 1, height) < 0 and height < max(heights):
                reached[start] = ((score[0], score[1] - height**2), [*cuts, start])
            for end in range(start + 1, count + 1):
                size = sized(start, end, height)
                if size < 0:
                    break
                empty = height - _height(measure, start, end, plates[size])
                tried = (min(score[0], size), score[1] - empty**2)
                if tried > reached.get(end, (nothing, []))[0]:
                    reached[end] = (tried, [*cuts, end])
        best.append(reached)
    ends = [each[count] for each in best if count in each]
    return max(ends, key=lambda each: each[0])[1] if ends else None


def _largest(measure: Measure, start: int, end: int, height: float, plates: Sequence[float]) -> int:
    """Index of the largest plate size with which these blocks fit one column, or -1."""
    for index in range(len(plates) - 1, -1, -1):
        if _height(measure, start, end, plates[index]) <= height:
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


def _column(measure: Measure, start: int, end: int, height: float, plate: float, limit: float) -> Column:
    """The blocks with plates grown into the free space, and what is then left shared out between them."""
    plate = min(limit, plate)
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
