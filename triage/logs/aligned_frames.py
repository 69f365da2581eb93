"""Frames as text in columns: lines whose fields stand at fixed places after the point of the time.

One line, read in full, gives the places; all lines of a block are then held against them by whole-array
arithmetic. A line that differs in any way is left to the caller.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Final

import numpy as np
from numpy.typing import NDArray

from triage.logs.frames import EXTENDED_FLAG, EXTENDED_MAX, FrameBlock
from triage.logs.text_lines import (
    HEX_VALUE,
    NO_DIGIT,
    SPACE,
    Bytes,
    LineBlock,
    Places,
    at,
    byte_bits,
    decimal_numbers,
    digit_bits,
    every,
    first_at_or_after,
    hex_bytes,
    hex_digit_bits,
    names_at,
    words_of,
)

WIDEST_BEFORE: Final = 24
"""Blanks, number of the line and seconds before the point."""

LONGEST_DATA: Final = 8
FEW_DIGITS: Final = 4
"""More than so many digits write a 29-bit identifier where no letter marks it."""

_MOST_LAYOUTS: Final = 4

_TOP_BITS: Final = np.uint64(0x8080808080808080)
_BLANKS: Final = np.uint64(0x2020202020202020)
_LAST_BYTES: Final = np.array(
    [((1 << 64) - 1) ^ ((1 << 8 * (8 - count)) - 1) for count in range(9)], dtype=np.uint64
)
"""Masks of the last 0 to 8 of eight bytes."""


@dataclass(frozen=True, slots=True)
class Columns:
    """Places of the fields, counted from the point of the time.

    Attributes
    ----------
    fraction : int
        Digits behind the point; a blank follows.
    pattern : bytes
        What stands from the point of the line that gave the places up to the data; the same must stand in
        all lines but where fields are.
    direction : int
        First place of ``Rx`` or ``Tx``.
    channel : int or None
        One digit.
    identifier, behind_identifier : int
        First place of the identifier, and of the field behind it; blanks beside it.
    marked : bool
        Whether an ``x`` behind the identifier marks 29 bits; else more than four digits do.
    length, data : int
        One digit from 0 to 8, and the first pair of digits, each pair behind one blank.
    numbered : bool
        Whether the number of the line stands before the time.
    """

    fraction: int
    pattern: bytes
    direction: int
    channel: int | None
    identifier: int
    behind_identifier: int
    marked: bool
    length: int
    data: int
    numbered: bool


@dataclass(frozen=True, slots=True)
class AlignedLines:
    """Lines that stand in the columns: number in the block, time as text, and the frame.

    Attributes
    ----------
    line, time_start, time_stop : int[N]
    point : int[N]
    key : uint32[N]
    length : int[N]
    """

    line: Places
    time_start: Places
    time_stop: Places
    point: Places
    key: NDArray[np.uint32]
    length: Places

    def only(self, chosen: NDArray[np.bool_] | slice) -> AlignedLines:
        """Return some of them."""
        return AlignedLines(*(getattr(self, name)[chosen] for name in self.__slots__))

    def times(self, block: LineBlock) -> NDArray[np.float64]:
        """Return the times as the text gives them."""
        return decimal_numbers(block.code, self.time_start, self.time_stop)

    def frames(self, block: LineBlock, columns: Columns, time_s: NDArray[np.float64]) -> FrameBlock:
        """Return the frames of these lines."""
        bus: tuple[str, ...] = ("1",)
        bus_index = np.zeros(self.line.size, dtype=np.intp)
        if columns.channel is not None:
            place = self.point + columns.channel
            bus, bus_index = names_at(block, place, place + 1)
        payload = hex_bytes(block.code, self.point + columns.data, self.length, step=3)
        return FrameBlock(time_s, self.key, bus, bus_index, payload, self.length.astype(np.uint8))


def find_aligned(block: LineBlock, columns: Columns) -> AlignedLines:
    """Find the lines of a block that stand in the columns."""
    code = block.code
    if code.size < 64:
        return _none_found()
    points = np.flatnonzero(code == ord("."))
    point = first_at_or_after(points, block.start, otherwise=code.size)
    line = np.flatnonzero(point + columns.data <= block.stop)
    start, stop, point = block.start[line], block.stop[line], point[line]
    good, time_start = _check_time(code, start, point, columns)
    good &= _follows_pattern(code, point, columns)
    direction = at(code, point + columns.direction)
    good &= (direction == ord("R")) | (direction == ord("T"))
    if columns.channel is not None:
        good &= _is_digit(at(code, point + columns.channel))
    key, known = _identifiers(code, point, columns)
    length = at(code, point + columns.length).astype(np.intp) - ord("0")
    good &= known & (length >= 0) & (length <= LONGEST_DATA) & (at(code, point + columns.length + 1) <= SPACE)
    length = np.where(good, length, 0)
    good &= _check_data(code, point + columns.data, length, stop)
    found = AlignedLines(line, time_start, point + 1 + columns.fraction, point, key, length)
    return found if good.all() else found.only(good)


def _none_found() -> AlignedLines:
    none = np.zeros(0, dtype=np.intp)
    return AlignedLines(none, none, none, none, none.astype(np.uint32), none)


def _follows_pattern(code: Bytes, point: Places, columns: Columns) -> NDArray[np.bool_]:
    """Whether the same stands between the fields as in the pattern, eight bytes at a time."""
    free = np.zeros(len(columns.pattern), dtype=np.bool_)
    free[1 : 1 + columns.fraction] = True
    free[columns.identifier : columns.behind_identifier] = True
    free[[place for place in (columns.channel, columns.direction, columns.length) if place is not None]] = (
        True
    )
    kept = np.where(free, 0, 0xFF).astype(np.uint8).tobytes()
    word = words_of(code)
    good = np.ones(point.size, dtype=np.bool_)
    for offset in range(0, len(kept), 8):
        mask = np.uint64(int.from_bytes(kept[offset : offset + 8], "little"))
        wanted = np.uint64(int.from_bytes(columns.pattern[offset : offset + 8], "little")) & mask
        if mask:
            good &= (word[np.minimum(point + offset, word.size - 1)] & mask) == wanted
    return good


def _stands(code: Bytes, place: Places, word: bytes) -> NDArray[np.bool_]:
    """Whether a word stands at each place, eight bytes at a time."""
    eights = words_of(code)
    there = np.ones(place.size, dtype=np.bool_)
    for offset in range(0, len(word), 8):
        part = word[offset : offset + 8]
        mask = np.uint64((1 << 8 * len(part)) - 1)
        # not take(): it would copy all the overlapping words first
        found = eights[np.minimum(place + offset, eights.size - 1)] & mask
        there &= found == np.uint64(int.from_bytes(part, "little"))
    return there


def _is_digit(letter: Bytes) -> NDArray[np.bool_]:
    return (letter - np.uint8(ord("0"))) <= np.uint8(9)


def _check_time(
    code: Bytes, start: Places, point: Places, columns: Columns
) -> tuple[NDArray[np.bool_], Places]:
    """Whether blanks (and a number) and digits stand before the point and digits behind; where they begin."""
    room = point - start
    good = (room <= WIDEST_BEFORE) & (room > 0)
    good &= at(code, point + 1 + columns.fraction) == SPACE
    for offset in range(columns.fraction):
        good &= _is_digit(at(code, point + 1 + offset))
    size = np.zeros(point.size, dtype=np.intp)
    for number in range(WIDEST_BEFORE // 8):
        if number and np.all(room <= 8 * number):
            break
        word = _eight_before(code, point - 8 * number, room - 8 * number)
        digit = digit_bits(word)
        if number == 0:
            size = _digits_at_the_end(digit)
            good &= (size > 0) & (size < 8)
            other = digit & ~_LAST_BYTES[size]
        else:
            other = digit
        usual = byte_bits(word, SPACE) | digit
        if columns.numbered:
            usual |= byte_bits(word, ord(")"))
            other = np.zeros_like(other)
        good &= (usual == _TOP_BITS) & (other == 0)
    return good, point - size


def _eight_before(code: Bytes, place: Places, room: Places) -> NDArray[np.uint64]:
    """Return the eight bytes before each place; those beyond the room, of the line before, read as blanks."""
    word = words_of(code)
    found = word[np.clip(place - 8, 0, word.size - 1)]
    # At the very beginning of the text there are no eight bytes before.
    short = np.flatnonzero(place < 8)
    for number in short.tolist():
        text = code[: max(int(place[number]), 0)].tobytes().rjust(8, b" ")
        found[number] = int.from_bytes(text, "little")
    if np.all(room >= 8):
        return found
    mask = _LAST_BYTES[np.clip(room, 0, 8)]
    return (found & mask) | (_BLANKS & ~mask)


def _digits_at_the_end(digit: NDArray[np.uint64]) -> Places:
    """Count the digits at the end of eight bytes from their bits."""
    size = np.zeros(digit.size, dtype=np.intp)
    for count in range(1, 9):
        all_of_them = _LAST_BYTES[count] & _TOP_BITS
        so_many = (digit & all_of_them) == all_of_them
        if not so_many.any():
            break
        size += so_many
    return size


def _identifiers(
    code: Bytes, point: Places, columns: Columns
) -> tuple[NDArray[np.uint32], NDArray[np.bool_]]:
    """Keys, and whether an identifier stands there between blanks."""
    key = np.zeros(point.size, dtype=np.uint32)
    good = np.zeros(point.size, dtype=np.bool_)
    digit = _digits_of_field(code, point, columns)
    for _ in range(_MOST_LAYOUTS):
        rest = np.flatnonzero(~good)
        if not rest.size or not digit[rest[0]]:
            break
        layout = digit[rest[0]]
        alike = slice(None) if np.all(digit == layout) else rest[digit[rest] == layout]
        key[alike], good[alike] = _identifiers_alike(code, point[alike], columns, int(layout))
        digit[alike] = 0
    rest = np.flatnonzero(~good)
    if rest.size:
        key[rest], good[rest] = _each_identifier(code, point[rest], columns)
    return key, good


def _digits_of_field(code: Bytes, point: Places, columns: Columns) -> NDArray[np.uint64]:
    """Return :func:`hex_digit_bits` of eight places of the field; 0 where all else is not blank."""
    first = _first_of_field(columns)
    width = columns.behind_identifier - first
    inside = ~_LAST_BYTES[8 - min(width, 8)]
    word = words_of(code)[np.minimum(point + first, code.size - 8)] & inside
    word |= _BLANKS & ~inside
    digit = hex_digit_bits(word)
    good = (digit | byte_bits(word, SPACE)) == _TOP_BITS
    if first > columns.identifier:
        good &= at(code, point + columns.identifier) == SPACE
    good &= _stands(code, point + first + 8, b" " * (width - 8))
    return np.where(good, digit, np.uint64(0))


def _first_of_field(columns: Columns) -> int:
    """Where digits may begin; the field may begin with the blank that parts it from the one before."""
    return columns.identifier + (columns.pattern[columns.identifier] == SPACE)


def _identifiers_alike(
    code: Bytes, point: Places, columns: Columns, layout: int
) -> tuple[NDArray[np.uint32], NDArray[np.bool_]]:
    """Keys of identifiers with the same digits set, of which the field holds nothing else but blanks."""
    first, size = (layout & -layout).bit_length() // 8 - 1, layout.bit_count()
    last = first + size - 1
    if layout >> (8 * last + 7) != 1:
        return np.zeros(point.size, dtype=np.uint32), np.zeros(point.size, dtype=np.bool_)  # two words
    value = _hex_value(words_of(code)[point + _first_of_field(columns)], first, size)
    extended = not columns.marked and size > FEW_DIGITS
    good = value <= EXTENDED_MAX
    return value | np.uint32(EXTENDED_FLAG if extended else 0), good


def _hex_value(word: NDArray[np.uint64], first: int, size: int) -> NDArray[np.uint32]:
    """Return the number that some of eight bytes write, all of them hexadecimal digits."""
    word = (word >> np.uint64(8 * first)) << np.uint64(8 * (8 - size))
    word = (word & every(0x0F)) + ((word >> np.uint64(6)) & every(0x01)) * np.uint64(9)
    # Digits to pairs, pairs to fours, fours to eight; the first digit is in the lowest byte.
    word = ((word << np.uint64(4)) | (word >> np.uint64(8))) & np.uint64(0x00FF00FF00FF00FF)
    word = ((word << np.uint64(8)) | (word >> np.uint64(16))) & np.uint64(0x0000FFFF0000FFFF)
    return ((word << np.uint64(16)) | (word >> np.uint64(32))).astype(np.uint32)


def _each_identifier(
    code: Bytes, point: Places, columns: Columns
) -> tuple[NDArray[np.uint32], NDArray[np.bool_]]:
    """Do the same letter by letter, for any layout and for marked ones."""
    value = np.zeros(point.size, dtype=np.uint32)
    digits = np.zeros(point.size, dtype=np.uint8)
    ended, marked = np.zeros((2, point.size), dtype=np.bool_)
    good = np.ones(point.size, dtype=np.bool_)
    place = columns.identifier
    while place < columns.behind_identifier and not ended.all():
        letter = at(code, point + place)
        digit = HEX_VALUE[letter]
        is_digit = digit != NO_DIGIT
        mark = (letter == ord("x")) & (digits > 0) & ~ended
        good &= (is_digit & ~ended) | (letter == SPACE) | mark
        marked |= mark
        ended |= (digits > 0) & ~is_digit
        value = np.where(is_digit, (value << np.uint32(4)) | digit, value)
        digits += is_digit
        place += 1
    good &= _stands(code, point + place, b" " * (columns.behind_identifier - place))
    good &= (digits > 0) & (digits <= 8) & (value <= EXTENDED_MAX) & (columns.marked | ~marked)
    extended = marked if columns.marked else digits > FEW_DIGITS
    return value | np.where(extended, np.uint32(EXTENDED_FLAG), np.uint32(0)), good


_PAIRS: Final = b" 00 00 00 00 00 00 00 00"
"""Eight pairs of digits, each behind a blank."""


def _check_data(code: Bytes, place: Places, length: Places, stop: Places) -> NDArray[np.bool_]:
    """Whether so many pairs of digits stand there, and then the line ends or a blank follows."""
    end = place - 1 + 3 * length
    good = end <= stop
    good &= (end >= stop) | (at(code, end) == SPACE)
    if np.all(good & (length == LONGEST_DATA)):
        return _are_pairs(code, place - 1)
    whole = np.flatnonzero(good & (length == LONGEST_DATA))
    others = np.flatnonzero(good & (length < LONGEST_DATA))
    good[whole] = _are_pairs(code, place[whole] - 1)
    for number in range(int(length[others].max(initial=0))):
        first = place[others] + 3 * number
        pair = (HEX_VALUE[at(code, first)] != NO_DIGIT) & (HEX_VALUE[at(code, first + 1)] != NO_DIGIT)
        good[others] &= (pair & (at(code, first - 1) == SPACE)) | (length[others] <= number)
    return good


def _are_pairs(code: Bytes, place: Places) -> NDArray[np.bool_]:
    """Whether eight pairs of digits stand there, each behind a blank."""
    word = words_of(code)
    good = np.ones(place.size, dtype=np.bool_)
    for offset in range(0, len(_PAIRS), 8):
        eight = _PAIRS[offset : offset + 8]
        blanks = np.uint64(
            int.from_bytes(bytes(0xFF if letter == SPACE else 0 for letter in eight), "little")
        )
        found = word[np.minimum(place + offset, word.size - 1)]
        good &= (found & blanks) == (_BLANKS & blanks)
        good &= (hex_digit_bits(found) | blanks) & _TOP_BITS == _TOP_BITS
    return good
