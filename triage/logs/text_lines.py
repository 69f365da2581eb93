"""Many lines of text at once: where they begin and end, and numbers in them, by whole-array arithmetic.

Readers of frames as text use this for the lines that look as nearly all lines do, and read the few others one
by one. All positions are indices into the bytes of a block.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from typing import Final

import numpy as np
from numpy.typing import NDArray

from triage.logs.source import LONGEST_LINE_BYTES, Source, endless_line

Bytes = NDArray[np.uint8]
Places = NDArray[np.intp]

BLOCK_BYTES: Final = 4 << 20
"""Large enough that the arithmetic outweighs its setting up, small enough for the cache of a processor."""

NEW_LINE: Final = 10
RETURN: Final = 13
SPACE: Final = 32
NO_DIGIT: Final = 255


def _digit_values() -> Bytes:
    values = np.full(256, NO_DIGIT, dtype=np.uint8)
    for value, pair in enumerate(zip(b"0123456789abcdef", b"0123456789ABCDEF", strict=True)):
        values[list(pair)] = value
    return values


HEX_VALUE: Final = _digit_values()
"""Value of a hexadecimal digit by its byte, 255 for any other byte."""


@dataclass(frozen=True, slots=True)
class LineBlock:
    """Whole lines of a text.

    Attributes
    ----------
    text : bytes
        Every line ends in a line feed, which a carriage return may precede.
    code : uint8[N]
        The same bytes as numbers.
    start, stop : int[L]
        First byte of each line, and the byte behind its last one (line end left out).
    share : float
        How much of the file is used up.
    """

    text: bytes
    code: Bytes
    start: Places
    stop: Places
    share: float

    def line(self, number: int) -> bytes:
        """Return one line."""
        return self.text[self.start[number] : self.stop[number]]

    def plain_text(self) -> bytes:
        """Return the text with line feeds as the only line ends."""
        return self.text.translate(None, b"\r") if b"\r" in self.text else self.text


def line_blocks(source: Source) -> Iterator[LineBlock]:
    """Yield the whole text of a source in blocks of whole lines; the last line may lack its end.

    Only two texts are in the memory at a time, that of the block and what is left for the next one.

    Raises
    ------
    DamagedLog
        When a line is longer than any recorder writes.
    """
    waiting: list[bytes] = []
    share = 0.0
    done = 0
    for share, piece in _text_pieces(source):
        # A return at the very end may be half of a line end.
        cut = piece.rfind(b"\n") + 1 or piece.rfind(b"\r", 0, len(piece) - 1) + 1
        done += len(piece)
        if not cut and sum(map(len, waiting)) > BLOCK_BYTES + LONGEST_LINE_BYTES:
            raise endless_line(source.name, done)
        if not cut or sum(map(len, waiting)) + cut < BLOCK_BYTES:
            waiting.append(piece)
            continue
        yield _block(b"".join((*waiting, piece[:cut])), share)
        waiting = [piece[cut:]]
    if rest := b"".join(waiting):
        yield _block(rest, share)


def _text_pieces(source: Source) -> Iterator[tuple[float, bytes]]:
    if source.encoding.startswith("utf-16"):
        yield 1.0, source.text_bytes()
        return
    mark = b"\xef\xbb\xbf"
    for number, (share, piece) in enumerate(source.blocks()):
        yield share, piece.removeprefix(mark) if number == 0 else piece


def _block(text: bytes, share: float) -> LineBlock:
    code = np.frombuffer(text, dtype=np.uint8)
    feed = np.flatnonzero(code == NEW_LINE)
    stop = feed if text.endswith(b"\n") else np.append(feed, len(text))
    if b"\r" in text:
        # Leaving the returns where they are is many times faster than taking them out.
        paired = code[feed - 1] == RETURN
        if np.count_nonzero(code == RETURN) != np.count_nonzero(paired) or text.startswith(b"\n"):
            return _block(text.replace(b"\r\n", b"\n").replace(b"\r", b"\n"), share)
        stop = stop.copy()
        stop[: feed.size] -= paired
    return LineBlock(text, code, np.concatenate(([0], feed[: stop.size - 1] + 1)), stop, share)


def at(code: Bytes, place: Places) -> Bytes:
    """Return the bytes at some places; beyond the ends those at the ends."""
    return code.take(place, mode="clip")


def words_of(code: Bytes) -> NDArray[np.uint64]:
    """Return the eight bytes from every place on as one number, the first byte lowest, uint64[N - 7]."""
    return np.ndarray((max(code.size - 7, 0),), np.dtype("<u8"), buffer=code.data, strides=(1,))


def all_digits(word: NDArray[np.uint64]) -> bool:
    """Tell whether eight bytes are decimal digits, in every word."""
    upper = np.uint64(0xF0F0F0F0F0F0F0F0)
    digits = np.uint64(0x3030303030303030)
    # Six more leaves the upper half of a digit alone, and changes that of the six bytes behind the digits.
    more = word + np.uint64(0x0606060606060606)
    return bool(np.all((word & upper == digits) & (more & upper == digits)))


def every(byte: int) -> np.uint64:
    """Return eight times the same byte as a word."""
    return np.uint64(byte * 0x0101010101010101)


def digit_bits(word: NDArray[np.uint64]) -> NDArray[np.uint64]:
    """Return the top bit of every byte that is a decimal digit."""
    # Adding 0x80 less a limit sets the top bit from the limit on; no byte carries into the next one.
    low = word & every(0x7F)
    digit = (low + every(0x80 - ord("0"))) & ~(low + every(0x80 - ord("9") - 1))
    bits: NDArray[np.uint64] = digit & every(0x80) & ~word
    return bits


def byte_bits(word: NDArray[np.uint64], byte: int) -> NDArray[np.uint64]:
    """Return the top bit of every byte that equals one below 0x80."""
    other = word ^ every(byte)
    bits: NDArray[np.uint64] = ~((other & every(0x7F)) + every(0x7F)) & ~other & every(0x80)
    return bits


def hex_digit_bits(word: NDArray[np.uint64]) -> NDArray[np.uint64]:
    """Return the top bit of every byte that is a hexadecimal digit."""
    small = (word | every(0x20)) & every(0x7F)
    letter = (small + every(0x80 - ord("a"))) & ~(small + every(0x80 - ord("f") - 1))
    bits: NDArray[np.uint64] = digit_bits(word) | (letter & every(0x80) & ~word)
    return bits


def first_at_or_after(found: Places, place: Places, *, otherwise: int) -> Places:
    """Return for each place the first of the found ones not before it."""
    if found.size == place.size and np.all(found >= place) and np.all(found[:-1] < place[1:]):
        return found
    index = np.searchsorted(found, place)
    return np.append(found, otherwise)[index]


def count_between(flag: NDArray[np.bool_], start: Places, stop: Places) -> Places:
    """Count the flags in each of many stretches that do not overlap and rise."""
    if start.size == 0:
        return np.zeros(0, dtype=np.intp)
    bounds = np.empty(2 * start.size, dtype=np.intp)
    bounds[0::2], bounds[1::2] = start, stop
    # One more, for a stretch may end with the text.
    counts = np.add.reduceat(np.append(flag, False), bounds, dtype=np.int32)[0::2].astype(np.intp)
    counts[stop <= start] = 0  # of an empty stretch the sum is its first element
    return counts


def hex_numbers(code: Bytes, start: Places, width: int) -> tuple[NDArray[np.uint32], NDArray[np.bool_]]:
    """Return the value of ``width`` hexadecimal digits at each place, and whether all were such digits."""
    value = np.zeros(start.size, dtype=np.uint32)
    good = np.ones(start.size, dtype=np.bool_)
    for offset in range(width):
        digit = HEX_VALUE[at(code, start + offset)]
        good &= digit != NO_DIGIT
        value = (value << np.uint32(4)) | (digit & np.uint8(15))
    return value, good


def hex_bytes(code: Bytes, start: Places, length: Places, *, step: int) -> Bytes:
    """Return bytes written as pairs of digits every ``step`` places, uint8[N, longest], padded with zeros."""
    longest = int(length.max(initial=0))
    payload = np.zeros((start.size, longest), dtype=np.uint8)
    for number in range(longest):
        there = length > number
        place = start[there] + number * step
        high, low = HEX_VALUE[at(code, place)], HEX_VALUE[at(code, place + 1)]
        payload[there, number] = (high << np.uint8(4)) | (low & np.uint8(15))
    return payload


def decimal_numbers(code: Bytes, start: Places, stop: Places) -> NDArray[np.float64]:
    """Return decimal numbers as :class:`float` reads them, NaN where there is none."""
    width = int(np.max(stop - start, initial=0))
    if width == 0:
        return np.full(start.size, np.nan)
    place = start[:, np.newaxis] + np.arange(width)
    cells = np.where(place < stop[:, np.newaxis], at(code, place), np.uint8(0))
    words = np.ascontiguousarray(cells).view(f"S{width}")[:, 0]
    try:
        numbers: NDArray[np.float64] = words.astype(np.float64)
    except ValueError:
        numbers = np.array([_number(word) for word in words.tolist()])
    return numbers


def names_at(block: LineBlock, start: Places, stop: Places) -> tuple[tuple[str, ...], Places]:
    """Return the different words at some places, and which one each is."""
    width = int(np.max(stop - start, initial=1))
    place = start[:, np.newaxis] + np.arange(width)
    cells = np.where(place < stop[:, np.newaxis], at(block.code, place), np.uint8(0))
    words, index = np.unique(np.ascontiguousarray(cells).view(f"S{width}")[:, 0], return_inverse=True)
    return tuple(word.decode("ascii", "replace") for word in words.tolist()), index


def _number(word: bytes) -> float:
    try:
        return float(word)
    except ValueError:
        return float("nan")
