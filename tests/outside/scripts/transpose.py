"""transpose.tsv and numbers.tsv: chord progressions in other keys, and as numbers.

A progression is moved by the spelled interval between the two tonics, in music21 and in tonal;
a row is kept where both agree and no root or bass needs a double accidental.
"""

import re

from music21 import chord as chords, interval, key, pitch, roman

from common import from_music21, to_music21, tonal, write_tsv

TONICS = "C G D A E B F# Gb Db Ab Eb Bb F".split()
FROM = "C G D A E F Bb Eb B".split()
# Written once in C (common practice, not from any tune), moved to every other key below.
PROGRESSIONS = [
    ("major", "C F G7 C"),
    ("major", "C Am Dm7 G7"),
    ("major", "C D7 G7 C"),
    ("major", "C E7 A7 D7 G7 C"),
    ("major", "C Bb F C"),
    ("major", "C Eb F Ab Bb C"),
    ("major", "C C7 F F#dim7 C/G A7 D7 G7"),
    ("major", "C G/B Am C/G F C/E Dm G7sus4 G7"),
    ("major", "Cmaj7 C6 C#dim7 Dm7 Db7 C6/9"),
    ("major", "C F Fm C/G G7 C"),
    ("major", "C Em F Ab G7b9 Cadd9"),
    ("major", "C Gm7 C7 Fmaj7 Bb9 C Bm7b5 E7"),
    ("minor", "Cm Bb Ab G7"),
    ("minor", "Cm Fm G7 Cm"),
    ("minor", "Cm Eb Bb Cm/G"),
    ("minor", "Cm Dm7b5 G7 Cm Db"),
    ("minor", "Cm Cm/B Cm/Bb F/A Ab Gaug7"),
    ("dorian", "Cm F Cm Bb"),
    ("mixolydian", "C Bb Gm C"),
    ("mixolydian", "C C/Bb F/A Gm7"),
]
EVERY = 5  # Each progression takes every fifth pair of keys, so that all pairs come up in turn.


def split(symbol):
    """Root, suffix and bass of one of our symbols (6/9 is no slash chord)."""
    return re.fullmatch(r"([A-G][#b]?)(.*?)(?:/([A-G][#b]?))?", symbol).groups()


def moved(symbols, home, to):
    """The chords moved from one tonic to another, by music21 and by tonal."""
    step = tonal([{"ask": "distance", "from": home, "to": to}])[0]
    asked, mine = [], []
    by = interval.Interval(pitch.Pitch(to_music21(home)), pitch.Pitch(to_music21(to)))
    for symbol in symbols:
        root, suffix, bass = split(symbol)
        parts = [from_music21(by.transposePitch(pitch.Pitch(to_music21(p))).name) for p in (root, bass) if p]
        mine.append(parts[0] + suffix + (f"/{parts[1]}" if bass else ""))
        asked += [{"ask": "up", "note": p, "interval": step} for p in (root, bass) if p]
    answers = iter(tonal(asked))
    theirs = []
    for symbol in symbols:
        _, suffix, bass = split(symbol)
        theirs.append(next(answers) + suffix + (f"/{next(answers)}" if bass else ""))
    return mine, theirs


def usual(tonic, mode):
    """Whether a key has at most six accidentals."""
    return abs(key.Key(to_music21(tonic), mode).sharps) <= 6


def doubled(symbols):
    return any(re.search(r"##|(?<=[A-G]b)b", s) for s in symbols)


def transpose():
    rows, counted, apart, left_out, written = [], 0, 0, 0, {}
    for mode, line in PROGRESSIONS:
        for home in filter(lambda t: usual(t, mode), FROM):
            mine, theirs = moved(line.split(), "C", home)
            assert mine == theirs, (mine, theirs)
            written[mode, line, home] = mine
            for to in filter(lambda t: usual(t, mode), TONICS):
                if to == home:
                    continue
                counted += 1
                if counted % EVERY:
                    continue
                a, b = moved(mine, home, to)
                apart += a != b
                left_out += a == b and doubled(mine + a)
                if a == b and not doubled(mine + a):
                    rows.append((f"{home} {mode}", f"{to} {mode}", " ".join(mine), " ".join(a)))
    write_tsv("transpose.tsv", ["from", "to", "chords", "transposed"], rows)
    print("disagree:", apart, "left out for a double accidental:", left_out)
    return written


ROMAN = ["I", "II", "III", "IV", "V", "VI", "VII"]


def arabic(text):
    """An Arabic degree with its accidental from a Roman one: 'bVII' gives 'b7'."""
    sign, numeral = re.match(r"([b#]*)([IViv]+)", text).groups()
    return f"{sign}{ROMAN.index(numeral.upper()) + 1}"


def degree(note, tonic):
    """music21's and tonal's degree of a note over a tonic, counted in the major scale.

    The Roman numeral is asked of a major triad on the note, in the major key of the tonic.
    """
    root = pitch.Pitch(to_music21(note))
    triad = chords.Chord([root, root.transpose("M3"), root.transpose("P5")])
    figure = roman.romanNumeralFromChord(triad, key.Key(to_music21(tonic), "major"))
    mine = arabic(figure.frontAlterationString.replace("-", "b") + figure.romanNumeralAlone)
    theirs = arabic(tonal([{"ask": "roman", "tonic": tonic, "symbol": note}])[0])
    return mine, theirs


def numbers(written):
    seen, rows, apart, memory = set(), [], [], {}
    for (mode, _, home), symbols in written.items():
        for symbol in symbols:
            if (home, mode, symbol) in seen or doubled([symbol]):
                continue
            seen.add((home, mode, symbol))
            root, suffix, bass = split(symbol)
            said = []
            for note in (root, bass):
                if note and (note, home) not in memory:
                    memory[note, home] = degree(note, home)
                said.append(memory.get((note, home), ("", "")))
            if any(a != b for a, b in said):
                apart.append((home, symbol, said))
                continue
            # A digit straight after the degree would read as another number, so a suffix that starts with one
            # is kept in a column of its own.
            number = said[0][0]
            rows.append((f"{home} {mode}", symbol, number, suffix, said[1][0]))
    write_tsv("numbers.tsv", ["key", "chord", "degree", "suffix", "bass"], rows)
    print("disagree:", apart)


if __name__ == "__main__":
    numbers(transpose())
