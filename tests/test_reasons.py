"""What the system or a library says was wrong: its words in English, plain words in any other language."""

from __future__ import annotations

import errno
import json
import os
import tomllib

import pytest

from triage.reasons import library_words, reason_of
from triage.texts import said


def in_plain_words(error: Exception) -> str:
    """Say it as to another language that has translated nothing yet."""
    return said(reason_of(error).parts["text"], lambda _context, text: text)  # type: ignore[arg-type]


def test_the_system_is_quoted_in_english_and_put_in_plain_words() -> None:
    error = PermissionError(errno.EACCES, os.strerror(errno.EACCES))
    assert reason_of(error) == os.strerror(errno.EACCES)
    assert in_plain_words(error) == "this user has no right to it"


def test_an_error_of_the_system_without_words_of_ours_keeps_its_number() -> None:
    assert in_plain_words(OSError(9999, "odd trouble")) == "the system reports error 9999"


def test_the_place_of_a_broken_text_is_kept() -> None:
    with pytest.raises(tomllib.TOMLDecodeError) as broken:
        tomllib.loads("on = true\nlast = [1,,2]\n")
    assert reason_of(broken.value) == str(broken.value)
    assert in_plain_words(broken.value).endswith("(TOMLDecodeError), in line 2, column 11")
    with pytest.raises(json.JSONDecodeError) as other:
        json.loads('{"a": 1,,}')
    assert in_plain_words(other.value).endswith("in line 1, column 9")


UNKNOWN = "its content is not of the right form (Broken)"


@pytest.mark.parametrize(
    ("words", "meant"),
    [
        ("File 'a.csv' is encrypted, password required for extraction", "it is protected by a password"),
        ("Compressed file ended before the end-of-stream marker was reached", "it is cut off"),
        ("Bad CRC-32 for file 'a.csv'", "a checksum does not agree with its content"),
        ("That compression method is not supported", "it uses a form that is not known here"),
        ("CRC32 check failed", "a checksum does not agree with its content"),
        ("File name in directory 'encrypted.csv' and header b'crc.csv' differ.", UNKNOWN),
        ('no such member: "what\'s cut off.csv"', UNKNOWN),
        ("'truncated by the limit of letters", UNKNOWN),
        ("the writer's block was truncated, so it can't be read", "it is cut off"),
        ("the macrcode is wrong", UNKNOWN),
        ("bad name 'line 3'", UNKNOWN),
        ("Invalid value (at end of document)", UNKNOWN),
        ("", "its content is not of the right form (Broken)"),
    ],
)
def test_what_a_library_says_is_told_by_its_kind(words: str, meant: str) -> None:
    assert library_words(words, "Broken").parts["text"] == meant


def test_a_library_that_quotes_the_whole_file_is_cut_short() -> None:
    assert len(library_words("x" * 10_000, "Broken")) == 200


@pytest.mark.parametrize("words", ["foo", "\nfoo", " \r\n  foo\nbar"])
def test_the_first_line_with_words_is_told(words: str) -> None:
    assert reason_of(ValueError(words)) == "foo"


def test_an_error_of_empty_lines_is_told_by_its_kind() -> None:
    assert reason_of(ValueError("\n \n")) == "ValueError"


def test_a_text_of_another_encoding_is_told_with_its_name() -> None:
    with pytest.raises(UnicodeDecodeError) as broken:
        b"a\x81".decode("ascii")
    assert in_plain_words(broken.value) == "byte 1 is not of a text in ASCII"


def test_text_that_is_no_utf_8_and_nesting_are_told() -> None:
    with pytest.raises(UnicodeDecodeError) as broken:
        b"ab\xff".decode()
    assert in_plain_words(broken.value) == "byte 2 is not of a text in UTF-8"
    assert reason_of(RecursionError()) == "it is nested too deeply"
