"""The shorthand in which abc_cases.py and abc_more.py write what a snippet of ABC should come to."""

import re
from fractions import Fraction

LETTERS = {"C": 0, "D": 2, "E": 4, "F": 5, "G": 7, "A": 9, "B": 11}
CASES = []

STANDARD = "the standard's rule, own snippet"
EXAMPLE = "the standard's own short example"
MEMORY = "from memory of the standard"
PRACTICE = "common practice"
TABLE = "the standard's table"


def midi(name):
    """MIDI number of a name such as C4 (60), F#5, Bb3."""
    letter, signs, octave = re.fullmatch(r"([A-G])(#*|b*)(-?\d)", name).groups()
    return LETTERS[letter] + signs.count("#") - signs.count("b") + 12 * (int(octave) + 1)


def notes(text):
    """'C4 1/2, r 1, C4+E4 1' one after the other: [[at, for, midi]]; a length holds until the next is given."""
    at, lasts, out = Fraction(0), Fraction(1), []
    for item in filter(None, (part.strip() for part in text.split(","))):
        name, *length = item.split()
        lasts = Fraction(length[0]) if length else lasts
        for pitch in sorted(midi(p) for p in name.split("+")) if name != "r" else []:
            out.append([str(at), str(lasts), pitch])
        at += lasts
    return out


def tune(body, m="4/4", l="1/4", k="C", head=""):
    """A whole tune around a body; None leaves a field out."""
    lines = ["X:1", "T:Case"]
    lines += [f"M:{m}"] if m is not None else []
    lines += [f"L:{l}"] if l is not None else []
    lines += [head] if head else []
    return "\n".join([*lines, f"K:{k}", body, ""])


def case(name, section, source, abc, *, legal=True, volatile=False, **expect):
    """One case; `sounds` and `played` are written in shorthand and stored as notes and MIDI numbers."""
    if "sounds" in expect:
        expect["notes"] = notes(expect.pop("sounds"))
    if "played" in expect:
        expect["played"] = [midi(n) for n in expect["played"].split()]
    entry = {"name": name, "section": section, "source": source, "legal": legal}
    if volatile:
        entry["volatile"] = True
    CASES.append({**entry, "abc": abc, "expect": expect})
