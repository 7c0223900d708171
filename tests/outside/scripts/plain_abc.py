"""A second, tiny reader of one-voice ABC, written from the standard 2.1, to notice where music21 goes wrong.

It knows what the Ryan tunes use and no more: notes, rests, chords, grace notes, broken rhythm, tuplets, ties, accidentals
kept to the bar line at every octave (the standard's default), keys, inline fields. Repeats stay as written.
"""

import re
from fractions import Fraction

LETTERS = {"C": 0, "D": 2, "E": 4, "F": 5, "G": 7, "A": 9, "B": 11}
ACCIDENTALS = {"^^": 2, "^": 1, "=": 0, "_": -1, "__": -2}
MODES = {"maj": 0, "ion": 0, "mix": -1, "dor": -2, "min": -3, "aeo": -3, "m": -3, "phr": -4, "loc": -5, "lyd": 1}
TUPLETS = {2: 3, 3: 2, 4: 3, 6: 2, 8: 3}
NOTE = r"(\^{1,2}|_{1,2}|=)?([A-Ga-g])([,']*)"
LENGTH = r"(\d*)(/*)(\d*)"
TOKEN = re.compile(
    r'(?P<quote>"[^"]*")|(?P<deco>![^!]*!|\+[^+ ]*\+)|(?P<field>\[[A-Za-z]:[^\]]*\])|(?P<grace>\{[^}]*\})'
    rf"|(?P<tuplet>\((?P<tp>\d)(?::(?P<tq>\d?))?(?::(?P<tr>\d?))?)|(?P<bar>\[\|\]?|[|:]+[|\]]?|\[(?=\d))(?P<ending>[\d,-]*)"
    rf"|(?P<chord>\[[^\]|]*\])(?P<clen>{LENGTH})(?P<ctie>-?)"
    rf"|(?P<note>{NOTE})(?P<nlen>{LENGTH})(?P<ntie>[ ]?-)?"
    rf"|(?P<rest>[zx])(?P<rlen>{LENGTH})|(?P<whole>[ZX])(?P<bars>\d*)|(?P<broken><+|>+)|(?P<other>.)"
)


def length(text):
    """An ABC length: '3/2', '/', '//', '2' or nothing."""
    number, slashes, under = re.fullmatch(LENGTH, text).groups()
    below = int(under) if under else 2 ** len(slashes)
    return Fraction(int(number or 1), below if slashes else 1)


def signature(text):
    """A K: value as {letter: semitones}."""
    text = text.split("%")[0].strip()
    found = re.match(r"([A-G])([#b]?)\s*([A-Za-z]*)", text)
    if not found:
        return {}
    tonic, sign, mode = found.groups()
    fifths = "FCGDAEB".index(tonic) - 1 + {"#": 7, "b": -7, "": 0}[sign]
    fifths += MODES.get(mode.lower()[:3], 0)  # Capitals mean nothing in a mode, so EM is E minor.
    key = {n: 1 for n in "FCGDAEB"[: max(fifths, 0)]} | {n: -1 for n in "BEADGCF"[: max(-fifths, 0)]}
    for sign, letter in re.findall(r"(\^|_|=)([A-Ga-g])", text[found.end() :]):
        key[letter.upper()] = ACCIDENTALS[sign]
    return key


def metre(text):
    text = text.split("%")[0].strip()
    return {"C": Fraction(1), "C|": Fraction(1), "none": None}.get(text) or Fraction(text)


class Reader:
    def __init__(self):
        self.notes, self.at, self.unit, self.metre, self.key = [], Fraction(0), None, None, {}
        self.in_bar, self.open_ties, self.tuplet, self.strange = {}, {}, None, []
        self.metre_text = ""
        self.broken = Fraction(1)  # What a preceding < or > does to the note to come.
        self.last = None  # Start and members of the last note or rest, for a < or > to come.

    def field(self, letter, value):
        if letter == "K":
            self.key = signature(value)
        elif letter == "M":
            self.metre = metre(value)
        elif letter == "L":
            self.unit = Fraction(value.split("%")[0].strip()) * 4
        if letter == "K" and self.unit is None:
            self.unit = Fraction(1, 4) if self.metre is not None and self.metre < Fraction(3, 4) else Fraction(1, 2)

    def pitch(self, accidental, letter, octave):
        name = letter.upper()
        if accidental:
            self.in_bar[name] = ACCIDENTALS[accidental]
        shift = self.in_bar.get(name, self.key.get(name, 0))
        height = 60 + LETTERS[name] + (12 if letter.islower() else 0) + 12 * (octave.count("'") - octave.count(","))
        return height + shift, height

    def put(self, pitches, lasts, tied):
        """One note, chord or rest (no pitches); pitches are (midi, written height)."""
        lasts = lasts * self.broken
        if self.tuplet:
            factor, left = self.tuplet
            lasts *= factor
            self.tuplet = (factor, left - 1) if left > 1 else None
        self.broken = Fraction(1)
        ties, members = {}, []
        for midi, height in pitches:
            begun = self.open_ties.get(height)
            if begun is not None:
                self.notes[begun][1] += lasts
                index = begun
            else:
                self.notes.append([self.at, lasts, midi])
                index = len(self.notes) - 1
            members.append(index)
            if tied:
                ties[height] = index
        self.open_ties = ties
        self.last = (lasts, members)
        self.at += lasts

    def mend(self, marks):
        """A > or <: lengthen or shorten the note before, and remember the rest for the next."""
        if self.last is None:
            self.strange.append("broken rhythm with nothing before it")
            return
        short = Fraction(1, 2 ** len(marks))
        before, after = (2 - short, short) if marks[0] == ">" else (short, 2 - short)
        lasts, members = self.last
        for index in members:
            self.notes[index][1] += lasts * (before - 1)
        self.at += lasts * (before - 1)
        self.broken = after

    def music(self, line):
        for found in TOKEN.finditer(line):
            get = found.groupdict().get
            if get("note"):
                parts = re.match(NOTE, found["note"]).groups()
                self.put([self.pitch(*parts)], length(found["nlen"]) * self.unit, bool(found["ntie"]))
            elif get("chord"):
                inside = re.findall(NOTE + rf"({LENGTH})(-?)", found["chord"])
                if inside:
                    first = length(inside[0][3]) * length(found["clen"]) * self.unit
                    pitches = [self.pitch(a, n, o) for a, n, o, *_ in inside]
                    self.put(pitches, first, bool(found["ctie"]) or all(i[-1] for i in inside))
            elif get("rest"):
                self.put([], length(found["rlen"]) * self.unit, False)
            elif get("whole"):
                self.put([], int(found["bars"] or 1) * self.metre * 4, False)
            elif get("broken"):
                self.mend(found["broken"])
            elif get("tuplet"):
                p = int(found["tp"])
                q = int(found["tq"]) if found["tq"] else TUPLETS.get(p, 2)
                if p in (5, 7, 9) and not found["tq"]:
                    q = 3 if re.match(r"\s*(6|9|12)/", self.metre_text) else 2
                self.tuplet = (Fraction(q, p), int(found["tr"]) if found["tr"] else p)
            elif get("bar"):
                self.in_bar = {}
            elif get("field"):
                self.field(found["field"][1], found["field"][3:-1])
            elif get("other") and found["other"] not in " \t().~HIJKLMNOPQRSTUVWhijklmnopqrstuvwy\\`-$*;":
                self.strange.append(f"character {found['other']!r}")


def read(text):
    """Notes [at, for, midi] in quarter notes of a one-voice tune, and what looked strange."""
    reader, header = Reader(), True
    for line in text.splitlines():
        if line.startswith("%"):
            continue
        field = re.match(r"([A-Za-z]):(.*)", line)
        if field and not line.startswith("|"):
            if field[1] == "M":
                reader.metre_text = field[2]
            reader.field(field[1], field[2])
            header = header and field[1] != "K"
        elif not header:
            reader.music(re.sub(r"(?<!\\)%.*", "", line))
    notes = sorted(tuple(n) for n in reader.notes)
    return notes, reader.strange
