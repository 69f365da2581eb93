"""Ways to break a recording: bytes in, broken bytes out; the same generator gives the same bytes."""

from __future__ import annotations

import bz2
import gzip
import io
import lzma
import re
import struct
import zipfile
import zlib
from collections.abc import Callable

import numpy as np

Generator = np.random.Generator
Mutation = Callable[[bytes, Generator], bytes]

LARGEST = 3 << 20
NUMBER = re.compile(rb"-?\d+(?:[.,]\d+)?")
WORD = re.compile(rb"[A-Za-z_]{2,}")
STRANGE_NUMBERS = (
    b"1e308 -1e308 1e400 nan NaN -inf Infinity 0 -0 -1 1e-320 9223372036854775807 9223372036854775808 "
    b"18446744073709551616 4294967296 2147483648 65535 1e18 1e19 253402300800 -62135596800 0x1A0 1_000 "
    b"1,5 1.000,5 1'000 --1 +-1 12:61:99 24:00:00 2026-02-30 9999-12-31T23:59:59 0000-00-00 31.02.2026 "
    b"\xd9\xa1\xd9\xa2 \xc2\xb2 1\xc2\xa0000 TRUE #DIV/0! =1+1 \x00 \" ' \xff \x1a"
).split()
STRANGE_NUMBERS += [b"", b" ", b"9" * 400, b"0." + b"0" * 400 + b"1", b"-" * 50]
STRANGE_WORDS = (
    b"time Time[s] timestamp delta Date FL FR RL RR speed WheelSpeed_FL km/h m/s rpm rad/s mph Hz FL_edge_s "
    b"id data dlc bus channel extended ESP1 hex dec base absolute relative Tx Rx RTR CANFD ErrorFrame "
    b"BO_ SG_ VAL_ BA_ CM_ begin end triggerblock true none sensor gear __class__ %s%n {0} \\ \xe2\x80\xae "
    b"\xc3\xa4\xc3\xb6 \xf0\x9f\x9a\x97 \xed\xa0\x80 1A0#R can0 1A0##1 FILEVERSION=2.0 COLUMNS=N,O,T,I,d,l,D"
).split()
EDGES = (0, 1, 2, 7, 8, 15, 63, 64, 127, 128, 255, 256, 32767, 32768, 65535, 65536, 1 << 24, (1 << 31) - 1)
WIDE_EDGES = (*EDGES, 1 << 31, (1 << 32) - 1, 1 << 32, 1 << 40, (1 << 63) - 1, 1 << 63, (1 << 64) - 1)


def place_in(data: bytes, rng: Generator) -> int:
    """Draw a place; every third lies in the first 400 bytes, where headers are."""
    limit = min(len(data), 400) if rng.random() < 0.35 else len(data)
    return int(rng.integers(0, limit + 1))


def span_in(data: bytes, rng: Generator) -> tuple[int, int]:
    begin = place_in(data, rng)
    return begin, min(len(data), begin + int(2 ** rng.uniform(0, 11)))


def cut(data: bytes, rng: Generator) -> bytes:
    return data[: place_in(data, rng)]


def cut_front(data: bytes, rng: Generator) -> bytes:
    return data[place_in(data, rng) :]


def remove(data: bytes, rng: Generator) -> bytes:
    begin, end = span_in(data, rng)
    return data[:begin] + data[end:]


def repeat(data: bytes, rng: Generator) -> bytes:
    begin, end = span_in(data, rng)
    return data[:end] + data[begin:end] * int(2 ** rng.uniform(0, 7)) + data[end:]


def flip(data: bytes, rng: Generator) -> bytes:
    broken = bytearray(data)
    for _ in range(int(2 ** rng.uniform(0, 5)) if data else 0):
        broken[min(place_in(data, rng), len(data) - 1)] ^= int(rng.integers(1, 256))
    return bytes(broken)


def overwrite_integer(data: bytes, rng: Generator) -> bytes:
    width = int(rng.choice((1, 2, 4, 8)))
    value = int(WIDE_EDGES[rng.integers(0, len(WIDE_EDGES))]) % (1 << (8 * width))
    place = place_in(data, rng)
    new = value.to_bytes(width, "little" if rng.random() < 0.8 else "big")
    return data[:place] + new + data[place + width :]


def overwrite_float(data: bytes, rng: Generator) -> bytes:
    value = float(rng.choice((np.nan, np.inf, -np.inf, 1e308, -1e300, 1e-310, 0.0, 1e18)))
    place = place_in(data, rng)
    return data[:place] + struct.pack("<d", value) + data[place + 8 :]


def insert_noise(data: bytes, rng: Generator) -> bytes:
    place = place_in(data, rng)
    return data[:place] + rng.bytes(int(2 ** rng.uniform(0, 9))) + data[place:]


def insert_zeros(data: bytes, rng: Generator) -> bytes:
    place = place_in(data, rng)
    return data[:place] + b"\x00" * int(2 ** rng.uniform(0, 12)) + data[place:]


def insert_long_line(data: bytes, rng: Generator) -> bytes:
    place = place_in(data, rng)
    fill = (b"x", b"1", b",", b" ", b"(", b'"', b"1,", b";\t", b"-", b"=")[int(rng.integers(0, 10))]
    return data[:place] + fill * int(2 ** rng.uniform(8, 17)) + data[place:]


def replace_number(data: bytes, rng: Generator) -> bytes:
    return _replace(data, rng, NUMBER, STRANGE_NUMBERS)


def replace_word(data: bytes, rng: Generator) -> bytes:
    return _replace(data, rng, WORD, STRANGE_WORDS)


def _replace(data: bytes, rng: Generator, pattern: re.Pattern[bytes], choices: list[bytes]) -> bytes:
    for _ in range(int(2 ** rng.uniform(0, 4))):
        found = pattern.search(data, place_in(data, rng))
        if found is None:
            continue
        new = choices[int(rng.integers(0, len(choices)))]
        data = data[: found.start()] + new + data[found.end() :]
    return data


def replace_column(data: bytes, rng: Generator) -> bytes:
    """Put one strange number into a column of many rows."""
    lines, mark = data.split(b"\n"), _delimiter(data)
    column = int(rng.integers(0, max(1, lines[len(lines) // 2].count(mark) + 1)))
    begin = int(rng.integers(0, len(lines)))
    new = STRANGE_NUMBERS[int(rng.integers(0, len(STRANGE_NUMBERS)))]
    for index in range(begin, min(len(lines), begin + int(2 ** rng.uniform(0, 9)))):
        cells = lines[index].split(mark)
        if column < len(cells):
            cells[column] = new
            lines[index] = mark.join(cells)
    return b"\n".join(lines)


def scale_column(data: bytes, rng: Generator) -> bytes:
    """Give one column another size or sign, as another unit or another recorder would."""
    lines, mark = data.split(b"\n"), _delimiter(data)
    column = int(rng.integers(0, max(1, lines[len(lines) // 2].count(mark) + 1)))
    factor = float(rng.choice((0, -1, 1e3, 1e-3, 1e6, 1e9, 1e300, 1e-300, 3.6, np.nan)))
    for index, line in enumerate(lines):
        cells = line.split(mark)
        try:
            cells[column] = repr(float(cells[column]) * factor).encode()
        except (ValueError, IndexError):
            continue
        lines[index] = mark.join(cells)
    return b"\n".join(lines)


def drop_column(data: bytes, rng: Generator) -> bytes:
    lines, mark = data.split(b"\n"), _delimiter(data)
    column = int(rng.integers(0, max(1, lines[len(lines) // 2].count(mark) + 1)))
    twice = rng.random() < 0.4
    return b"\n".join(mark.join(_without(line.split(mark), column, twice=twice)) for line in lines)


def _without(cells: list[bytes], column: int, *, twice: bool) -> list[bytes]:
    return cells[:column] + cells[column : column + 1] * (2 if twice else 0) + cells[column + 1 :]


def shuffle_lines(data: bytes, rng: Generator) -> bytes:
    lines = data.split(b"\n")
    begin = int(rng.integers(0, len(lines)))
    end = min(len(lines), begin + int(2 ** rng.uniform(1, 9)))
    block = lines[begin:end]
    order = rng.permutation(len(block)) if rng.random() < 0.5 else range(len(block) - 1, -1, -1)
    return b"\n".join([*lines[:begin], *(block[i] for i in order), *lines[end:]])


def drop_lines(data: bytes, rng: Generator) -> bytes:
    lines = data.split(b"\n")
    keep = rng.random(len(lines)) < rng.choice((0.02, 0.5, 0.98))
    return b"\n".join(line for line, kept in zip(lines, keep, strict=True) if kept)


def cut_lines(data: bytes, rng: Generator) -> bytes:
    """End every line at the same place or cell."""
    width = int(2 ** rng.uniform(0, 6))
    return b"\n".join(line[:width] for line in data.split(b"\n"))


def swap_marks(data: bytes, rng: Generator) -> bytes:
    marks = (b",", b";", b"\t", b" ", b".", b"\n", b"\r", b"\r\n", b'"', b"#", b":", b"|", b"\x00", b"\x85")
    old, new = (marks[int(rng.integers(0, len(marks)))] for _ in range(2))
    return data.replace(old, new, -1 if rng.random() < 0.6 else int(2 ** rng.uniform(0, 6)))


def recode(data: bytes, rng: Generator) -> bytes:
    text = data.decode("utf-8", errors="replace")
    encodings = ["utf-16", "utf-16-le", "utf-16-be", "utf-32", "utf-8-sig", "cp1252", "utf-7", "cp037"]
    return text.encode(encodings[int(rng.integers(0, len(encodings)))], errors="replace")


def add_mark(data: bytes, rng: Generator) -> bytes:
    marks = (b"\xef\xbb\xbf", b"\xff\xfe", b"\xfe\xff", b"sep=;\r\n", b"\n\n\n", b"#", b"\x1f\x8b", b"PK\3\4")
    return marks[int(rng.integers(0, len(marks)))] + data


def _delimiter(data: bytes) -> bytes:
    return max((b",", b";", b"\t", b" "), key=data[:2000].count)


ANYWHERE: tuple[Mutation, ...] = (
    *(cut, cut_front, remove, repeat, flip, flip, overwrite_integer, overwrite_integer, overwrite_float),
    *(insert_noise, insert_zeros, insert_long_line),
)
IN_TEXT: tuple[Mutation, ...] = (
    *(replace_number, replace_number, replace_word, replace_word, replace_column, scale_column, drop_column),
    *(
        shuffle_lines,
        drop_lines,
        cut_lines,
        swap_marks,
        recode,
        add_mark,
        cut,
        flip,
        repeat,
        insert_long_line,
    ),
)


def mutate(data: bytes, rng: Generator) -> bytes:
    """Break some bytes, in one to four ways."""
    ways = IN_TEXT if b"\x00" not in data[:4096] else ANYWHERE
    for _ in range(int(rng.choice((1, 1, 1, 2, 2, 3, 4)))):
        data = _from(ways if rng.random() < 0.85 else ANYWHERE, rng)(data, rng)
        data = data[:LARGEST]
    return data


def _from(ways: tuple[Mutation, ...], rng: Generator) -> Mutation:
    return ways[int(rng.integers(0, len(ways)))]


def splice(first: bytes, second: bytes, rng: Generator) -> bytes:
    """Go over from one recording into another, in either's middle."""
    return (first[: place_in(first, rng)] + second[place_in(second, rng) :])[:LARGEST]


def wrap(data: bytes, rng: Generator) -> bytes:
    """Pack some bytes; now and then twice."""
    packers = (gzip.compress, lzma.compress, bz2.compress, _zipped)
    packed = packers[int(rng.integers(0, len(packers)))](data)
    return wrap(packed, rng) if rng.random() < 0.05 else packed


def _zipped(data: bytes) -> bytes:
    buffer = io.BytesIO()
    with zipfile.ZipFile(buffer, "w", zipfile.ZIP_DEFLATED) as archive:
        archive.writestr("drive.csv", data)
        archive.writestr("read me.txt", b"nothing")
    return buffer.getvalue()


def mutate_inside(data: bytes, rng: Generator) -> bytes:
    """Break what is packed in the file and pack it again, so that the packing holds; else break the file."""
    if data.startswith(b"PK\x03\x04"):
        return _mutate_member(data, rng)
    if data.startswith(b"LOGG"):
        return _mutate_container(data, rng)
    if data.startswith(b"\x1f\x8b"):
        return gzip.compress(mutate(gzip.decompress(data), rng))
    return mutate(data, rng)


def _mutate_member(data: bytes, rng: Generator) -> bytes:
    buffer = io.BytesIO()
    with zipfile.ZipFile(io.BytesIO(data)) as old, zipfile.ZipFile(buffer, "w", zipfile.ZIP_DEFLATED) as new:
        names = old.namelist()
        chosen = names[int(rng.integers(0, len(names)))]
        if rng.random() < 0.5:
            chosen = next((name for name in names if "sheet1" in name), chosen)
        for name in names:
            content = old.read(name)
            if name != chosen:
                new.writestr(name, content)
            elif rng.random() < 0.95:
                new.writestr(name, mutate(content, rng))
    return buffer.getvalue()


def _mutate_container(data: bytes, rng: Generator) -> bytes:
    """Break the objects in the first packed container of a BLF file."""
    place = data.find(b"LOBJ", 144)
    if place < 0 or len(data) < place + 32:
        return mutate(data, rng)
    size = int.from_bytes(data[place + 8 : place + 12], "little")
    try:
        objects = zlib.decompress(data[place + 32 : place + size])
    except zlib.error:
        return mutate(data, rng)
    packed = zlib.compress(mutate(objects, rng), 1)
    new_size = (32 + len(packed)).to_bytes(4, "little")
    header = data[place : place + 8] + new_size + data[place + 12 : place + 32]
    return data[:place] + header + packed + b"\x00" * (len(packed) % 4) + data[place + size :]
