"""Lines of a log of SocketCAN frames that look as nearly all do, many at once: ``(1.5) can0 1A0#0011``."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Final

import numpy as np
from numpy.typing import NDArray

from triage.logs.frames import EXTENDED_FLAG
from triage.logs.text_lines import (
    HEX_VALUE,
    NO_DIGIT,
    SPACE,
    Bytes,
    LineBlock,
    Places,
    all_digits,
    at,
    count_between,
    first_at_or_after,
    hex_numbers,
    words_of,
)

ERROR_FLAG: Final = 0x20000000
SHORTEST_BLOCK: Final = 64
_HEX_DIGITS: Final = b"0123456789abcdefABCDEF"


@dataclass(frozen=True, slots=True)
class PlainLines:
    """Log lines of data frames; positions as in :class:`triage.logs.text_lines.LineBlock`.

    Attributes
    ----------
    line : int[N]
        Number of the line in its block.
    bracket, word, mark, stop : int[N]
        The bracket behind the stamp, the blank before the identifier, the mark behind it, the end of the
        data.
    key : uint32[N]
    """

    line: Places
    start: Places
    bracket: Places
    word: Places
    mark: Places
    stop: Places
    key: NDArray[np.uint32]

    def only(self, chosen: NDArray[np.bool_]) -> PlainLines:
        """Return some of them."""
        return PlainLines(*(getattr(self, name)[chosen] for name in self.__slots__))


def find_plain_lines(block: LineBlock) -> PlainLines | None:
    """Find the lines ``(digits.digits) bus id#data`` of data frames; None when the text is none of a log."""
    return _find_uniform(block) or _find_each(block)


def _find_uniform(block: LineBlock) -> PlainLines | None:
    """Find that all lines of a block are plain, with stamps of one width; None where that is not so.

    Every line is proved to hold certain bytes that are no hexadecimal digits at certain places. When the
    block holds no more of such bytes, all others are digits, and no line needs to be looked at byte by byte.
    """
    code, start, stop = block.code, block.start, block.stop
    bracket, mark = np.flatnonzero(code == ord(")")), np.flatnonzero(code == ord("#"))
    if code.size < SHORTEST_BLOCK or not start.size == bracket.size == mark.size:
        return None
    if np.any(mark <= bracket + 5) or np.any(mark >= stop) or np.any(code[start] != ord("(")):
        return None
    if not _are_stamps(code, start, bracket):
        return None
    end = _without_direction(code, stop, mark)
    short = code[mark - 4] == SPACE
    blank = mark - np.where(short, 4, 9)
    digits = end - mark - 1
    odd = (code[blank] != SPACE) | (code[bracket + 1] != SPACE) | (digits % 2 != 0) | (digits > 16)
    others = _other_bytes_of_bus(code, bracket + 2, blank)
    # bracket, point, bracket, two blanks and the mark; line ends; direction and its blank
    expected = 6 * start.size + (code.size - int(np.sum(stop - start))) + int(np.sum(stop - end)) + others
    key = _keys(code, mark, short)
    odd |= ~short & (key & np.uint32(ERROR_FLAG) != 0)
    if others < 0 or odd.any() or len(block.text.translate(None, _HEX_DIGITS)) != expected:
        return None
    return PlainLines(np.arange(start.size), start, bracket, blank, mark, end, key)


def _are_stamps(code: Bytes, start: Places, bracket: Places) -> bool:
    """Whether all brackets hold a stamp of one width, with six digits behind the point."""
    seconds = int(bracket[0] - start[0]) - 8
    if not 8 <= seconds <= 16 or np.any(bracket - start != seconds + 8):
        return False
    word = words_of(code)
    # A digit, the point, six digits: with a digit in place of the point all must be digits.
    fraction = word[bracket - 8]
    others = fraction & np.uint64(0xFFFFFFFFFFFF00FF)
    points = bool(np.all(fraction - others == np.uint64(ord(".") << 8)))
    stamps = (others | np.uint64(ord("0") << 8), word[start + 1], word[start + seconds - 7])
    return points and all(map(all_digits, stamps))


def _without_direction(code: Bytes, stop: Places, mark: Places) -> Places:
    """End of the data where a direction, a blank and R or T, may follow it."""
    last = code[stop - 1]
    told = ((last == ord("R")) | (last == ord("T"))) & (code[stop - 2] == SPACE) & (stop - 2 > mark)
    end: Places = stop - 2 * told
    return end


def _other_bytes_of_bus(code: Bytes, start: Places, stop: Places) -> int:
    """Count the bytes of all names that are no hexadecimal digits; -1 where they are not of one width."""
    width = int(stop[0] - start[0])
    if not 1 <= width <= 8 or np.any(stop - start != width):
        return -1
    word = words_of(code)[stop - 8] >> np.uint64(8 * (8 - width))
    names = {int(word[0]): word.size} if np.all(word == word[0]) else _counted(word)
    total = 0
    for name, count in names.items():
        letters = name.to_bytes(8, "little")[:width]
        if any(letter <= SPACE or letter > ord("~") or letter in b"(#" for letter in letters):
            return -1
        total += count * sum(HEX_VALUE[letter] == NO_DIGIT for letter in letters)
    return total


def _counted(word: NDArray[np.uint64]) -> dict[int, int]:
    names, counts = np.unique(word, return_counts=True)
    return dict(zip(names.tolist(), counts.tolist(), strict=True))


def _keys(code: Bytes, mark: Places, short: NDArray[np.bool_]) -> NDArray[np.uint32]:
    """Keys of the identifiers before the marks."""
    key = np.zeros(mark.size, dtype=np.uint32)
    key[short] = hex_numbers(code, mark[short] - 3, 3)[0]
    key[~short] = hex_numbers(code, mark[~short] - 8, 8)[0] | np.uint32(EXTENDED_FLAG)
    return key


def _find_each(block: LineBlock) -> PlainLines | None:
    """Find the plain lines among others."""
    code, start, stop = block.code, block.start, block.stop
    size = code.size
    bracket = first_at_or_after(np.flatnonzero(code == ord(")")), start, otherwise=size)
    mark = first_at_or_after(np.flatnonzero(code == ord("#")), start, otherwise=size)
    good = (bracket < stop) & (mark < stop) & (mark > bracket) & (code[start.clip(max=size - 1)] == ord("("))
    if np.count_nonzero(good) < 0.2 * start.size:
        return None
    line = np.flatnonzero(good)
    start, stop, bracket, mark = start[line], stop[line], bracket[line], mark[line]
    short = at(code, mark - 4) == SPACE
    word = mark - np.where(short, 4, 9)
    narrow, narrow_good = hex_numbers(code, mark - 3, 3)
    wide, wide_good = hex_numbers(code, mark - 8, 8)
    # Error frames carry a flag in the identifier; they are read one by one.
    good = np.where(short, narrow_good, wide_good & (at(code, mark - 9) == SPACE) & (wide < ERROR_FLAG))
    good &= _is_stamp(code, start + 1, bracket) & _is_word(code, bracket, word)
    # What follows the data behind a blank, as the direction does, says nothing more.
    end = first_at_or_after(np.flatnonzero(HEX_VALUE[code] == NO_DIGIT), mark + 1, otherwise=size)
    good &= (end >= stop) | (at(code, end) == SPACE)
    stop = np.minimum(end, stop)
    digits = stop - mark - 1
    good &= (digits % 2 == 0) & (digits <= 16)
    key = np.where(short, narrow, wide | np.uint32(EXTENDED_FLAG))
    return PlainLines(line, start, bracket, word, mark, stop, key.astype(np.uint32)).only(good)


def _is_stamp(code: Bytes, start: Places, stop: Places) -> NDArray[np.bool_]:
    """Tell which stretches are digits, a point and digits."""
    digit = (code >= ord("0")) & (code <= ord("9"))
    others = count_between(~digit, start, stop)
    points = count_between(code == ord("."), start, stop)
    ends = (at(code, start) != ord(".")) & (at(code, stop - 1) != ord("."))
    size = stop - start
    stamp: NDArray[np.bool_] = (others == 1) & (points == 1) & ends & (size > 2) & (size <= 40)
    return stamp


def _is_word(code: Bytes, bracket: Places, word: Places) -> NDArray[np.bool_]:
    """Tell where one name of a bus stands between two blanks."""
    size = word - bracket - 2
    odd = (code <= SPACE) | (code == ord("(")) | (code > ord("~"))
    good: NDArray[np.bool_] = (size >= 1) & (size <= 32) & (at(code, bracket + 1) == SPACE)
    good &= count_between(odd, bracket + 2, np.maximum(word, bracket + 2)) == 0
    return good
