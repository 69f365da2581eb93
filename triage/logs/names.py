"""What a signal's name says about it: which wheel, and whether it is a speed."""

from __future__ import annotations

import re
import unicodedata
from dataclasses import dataclass
from functools import lru_cache
from typing import Final

from triage.corners import Corner
from triage.logs.unit_texts import SUFFIX_UNITS, normal_unit
from triage.logs.vocabulary import word_set

_FRONT: Final = word_set(
    "front frnt frt fnt fwd vorn vorne vorderrad avant ant anteriore delantera delantero del dianteira "
    "dianteiro voor fram forreste va vorderachse przod przedni przednia przednie"
)
_REAR: Final = word_set(
    "rear rea back hinten hint hinterrad arriere posteriore post trasera trasero tras "
    "traseira traseiro achter bak bageste ha hinterachse tyl tylny tylna tylne"
)
_LEFT: Final = word_set(
    "left lft lef links lnks li gauche sinistra sinistro sx izquierda izquierdo izq esquerda esquerdo esq "
    "vänster venstre lewy lewa lewe"
)
_RIGHT: Final = word_set(
    "right rght rgt rig rht rechts re droite destra destro dx derecha derecho der dcha direita direito "
    "höger hojre hoyre prawy prawa prawe"
)
_CODES: Final[dict[str, Corner]] = {
    "fl": "FL", "lf": "FL", "vl": "FL",
    "fr": "FR", "rf": "FR", "vr": "FR",
    "rl": "RL", "lr": "RL", "hl": "RL",
    "rr": "RR", "hr": "RR",
    "avg": "FL", "avd": "FR", "arg": "RL", "ard": "RR",
}  # fmt: skip
_CODES_BESIDE_WHEEL: Final[dict[str, Corner]] = {
    "ag": "FL", "ad": "FR", "di": "FL", "dd": "FR", "ti": "RL", "td": "RR", "asx": "FL", "adx": "FR",
    "psx": "RL", "pdx": "RR", "lv": "FL", "rv": "FR", "la": "RL", "ra": "RR",
}  # fmt: skip
"""Codes of other tongues that mean too much else unless a word of their own for wheel stands beside them."""

_ROMANCE_WHEEL: Final = word_set("roue rueda ruota roda wiel wielsnelheid")
_WHEEL: Final = word_set(
    "wheel wheels whl whls whs wss ws wh rad raeder rader räder roue roues ruota rueda roda wiel hjul kolo"
)
_SPEED: Final = word_set(
    "speed speeds spd velocity vel velo v w omega om rpm geschw geschwindigkeit drehzahl raddrehzahl "
    "radgeschwindigkeit radgeschw raddrehzahlen vitesse velocita velocidad velocidade snelheid "
    "wielsnelheid wss whs nrad vrad n kmh "
    "kph mph mps"
)
_PULSE: Final = word_set(
    "imp impulse impulses impuls pulse pulses pls puls tick ticks edge edges tooth teeth zaehne zähne flanken"
)
_FAULT: Final = word_set("fault faults flt fail failed failure defect defekt error err fehler dtc")
_NOT_SPEED: Final = (
    _PULSE
    | _FAULT
    | word_set(
        "valid validity val invalid inv qual quality qf qb qty status stat sts state cnt counter count "
        "counts ctr zaehler zähler press pressure prs druck temp temperature tmp act active activ "
        "activity torque tq trq moment dir direction richtung slip schlupf slp acc accel acceleration "
        "crc checksum chk chksum height level susp suspension damper door window tyre tire tpms tpm seat "
        "belt lamp light force load target setpoint desired cmd command min max std sigma toggle alive "
        "available avail avl mask sign plausible plaus ratio rel relative delta diff difference distance "
        "dist odo odometer angle pos position displacement travel jounce camber toe volt voltage current "
        "amps resistance reserved unused id flag flags bit factor offset confidence conf brake brk "
        "bremse sna noise variance var supply age"
    )
)
_OTHER_KNOWN: Final = word_set(
    "vehicle veh car steering steer str lenk winkel yaw gier rate lat long lateral abs esp esc sensor value"
)
_PLACES: Final = frozenset(_CODES) | _FRONT | _REAR | _LEFT | _RIGHT
_KNOWN: Final = _PLACES | _WHEEL | _SPEED | _NOT_SPEED | _OTHER_KNOWN
_STROKED: Final = str.maketrans("łŁøØđĐ", "lLoOdD")
"""Letters with a stroke, which cannot be taken apart as those with accents can."""

_LONGEST_WORD: Final = 40
_WORDS: Final = re.compile(r"[A-ZÄÖÜ]+(?![a-zäöüß])|[A-ZÄÖÜ]?[a-zäöüß]+|\d+")
_UNIT_IN_NAME: Final = re.compile(r"(?<!\s)\s{0,20}[\[(\{<]\s{0,20}([^\])}>]{0,40}?)\s{0,20}[\])}>]\s{0,20}$")


@dataclass(frozen=True, slots=True)
class NameReading:
    """A name taken apart.

    Attributes
    ----------
    words : tuple of str
        Lower-case words without the corner and without the unit.
    corner : str or None
        The wheel it names, if it names one.
    unit : str
        Unit the name itself states, in normal spelling; empty when it states none.
    """

    words: tuple[str, ...]
    corner: Corner | None
    unit: str

    @property
    def stem(self) -> str:
        """What four signals of one set have in common."""
        return " ".join(self.words)

    @property
    def names_speed(self) -> bool:
        """A word for speed stands in it and none that means something else."""
        return any(word in _SPEED for word in self.words) and not self.names_other

    @property
    def names_wheel(self) -> bool:
        """A word for wheel stands in it."""
        return any(word in _WHEEL for word in self.words)

    @property
    def names_other(self) -> bool:
        """A word stands in it that no wheel speed carries: fault, counter, pressure."""
        return any(word in _NOT_SPEED for word in self.words)

    @property
    def names_pulses(self) -> bool:
        """It counts pulses."""
        return any(word in _PULSE for word in self.words)

    @property
    def names_fault(self) -> bool:
        """It is a fault bit."""
        return any(word in _FAULT for word in self.words)


@lru_cache(maxsize=4096)
def read_name(name: str) -> NameReading:
    """Take a column or signal name apart.

    Examples
    --------
    >>> read_name("WheelSpeedFrontLeft").corner
    'FL'
    >>> read_name("v_rr_ms").unit
    'm/s'
    """
    bare, unit = _split_bracket(name)
    words = [word for token in _WORDS.findall(_without_accents(bare)) for word in _segmented(token.lower())]
    if not unit:
        words, unit = _split_suffix(words)
    corner, rest = _find_corner(words)
    return NameReading(tuple(rest), corner, unit)


def bracket_unit(name: str) -> str:
    """Give the unit text in brackets at the end of a name, empty when there is none."""
    match = _UNIT_IN_NAME.search(name)
    return match.group(1) if match else ""


def _without_accents(text: str) -> str:
    """Give é as e and à as a; the German ä, ö, ü and ß stay, because they are written out as ae otherwise."""
    if text.isascii():
        return text
    return "".join(
        sign if sign in "äöüßÄÖÜ" else unicodedata.normalize("NFKD", sign)[0]
        for sign in unicodedata.normalize("NFC", text).translate(_STROKED)
    )


def _split_bracket(name: str) -> tuple[str, str]:
    match = _UNIT_IN_NAME.search(name)
    if match is None or not name[: match.start()].strip():
        return name, ""
    return name[: match.start()], normal_unit(match.group(1))


def _split_suffix(words: list[str]) -> tuple[list[str], str]:
    for length in (3, 2, 1):
        unit = SUFFIX_UNITS.get(tuple(words[-length:]), "") if len(words) > length else ""
        if unit:
            return words[:-length], unit
    return words, ""


def _find_corner(words: list[str]) -> tuple[Corner | None, list[str]]:
    for index in range(len(words) - 1, -1, -1):
        if words[index] in _CODES:
            return _CODES[words[index]], words[:index] + words[index + 1 :]
    if any(word in _ROMANCE_WHEEL for word in words) and words[-1] in _CODES_BESIDE_WHEEL:
        return _CODES_BESIDE_WHEEL[words[-1]], words[:-1]
    found = _word_pair(words) or _letter_pair(words)
    if found is None:
        return None, words
    corner, used = found
    return corner, [word for index, word in enumerate(words) if index not in used]


def _word_pair(words: list[str]) -> tuple[Corner, frozenset[int]] | None:
    """Find 'front' with 'left'; one of the two may be a single letter."""
    end = _first(words, _FRONT | _REAR)
    side = _first(words, _LEFT | _RIGHT)
    if end is not None and side is None:
        side = _first(words, frozenset("lr"), near=end)
    elif side is not None and end is None:
        end = _first(words, frozenset("frvh"), near=side)
    if end is None or side is None:
        return None
    first = "F" if words[end] in _FRONT or words[end] in ("f", "v") else "R"
    second = "L" if words[side] in _LEFT or words[side] == "l" else "R"
    return _CODES[(first + second).lower()], frozenset((end, side))


def _letter_pair(words: list[str]) -> tuple[Corner, frozenset[int]] | None:
    for index in range(len(words) - 1, 0, -1):
        pair = words[index - 1] + words[index]
        if len(words[index]) == 1 and pair in _CODES:
            return _CODES[pair], frozenset((index - 1, index))
    return None


def _first(words: list[str], wanted: frozenset[str], near: int | None = None) -> int | None:
    for index, word in enumerate(words):
        if word in wanted and (near is None or abs(index - near) == 1):
            return index
    return None


def _segmented(token: str) -> list[str]:
    """Split run-together words such as ``wheelspeedfl``; a token that does not split whole stays whole."""
    if token in _KNOWN or not 3 <= len(token) <= _LONGEST_WORD or (token,) in SUFFIX_UNITS:
        return [token]
    if token[0] in "vwn" and token[1:] in _CODES:
        return [token[0], token[1:]]
    return list(_split_whole(token)) or [token]


def _split_whole(token: str) -> tuple[str, ...]:
    for length in range(len(token) - 1, 1, -1):
        head, tail = token[:length], token[length:]
        if head in _KNOWN and len(tail) > 1:
            rest = (tail,) if tail in _KNOWN else _split_whole(tail)
            if rest:
                return (head, *rest)
    return ()
