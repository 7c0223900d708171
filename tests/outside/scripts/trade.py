"""trade-shapes.tsv, trade-ring.tsv, trade-keys.tsv: the project's sheet of trade facts as tables.

The tables below are the sheet's own words, typed in by hand. The script adds what arithmetic can: the notes, what is
missing, the shapes a fifth lower. It stops where a shape has a note that is not in the chord as chords.tsv spells it.
"""

import csv

from common import FIXTURES, tonal, write_tsv

# Open strings in MIDI numbers, in the order in which the sheet names them.
TUNINGS = {
    "mandolin": [55, 62, 69, 76],
    "octave mandolin": [43, 50, 57, 64],
    "tenor banjo": [48, 55, 62, 69],
    "ukulele": [67, 60, 64, 69],
    "baritone ukulele": [50, 55, 59, 64],
    "five-string banjo": [67, 50, 55, 59, 62],
    "guitar": [40, 45, 50, 55, 59, 64],
}

# chord: shapes in the sheet's order, each "frets" or "frets:fingers", x = not played. Tag [C] throughout.
MANDOLIN = {
    "G": "0023:0012",
    "C": "0230:0120",
    "D": "2002:1002",
    "A": "2200:1200 2200:1100 2245:1134",
    "E": "4220:2110 1220:1230",
    "Em": "0220:0120",
    "Am": "2230:1120",
    "Bm": "4022:3011",
    "F": "5301:4301",
    "B": "4122:4122",
    "B7": "2122:2134",
    "D7": "2032:1032",
    "E7": "1020:1020",
    "A7": "2243:1132",
    "G7": "0021:0021",
}
CHOPS = [
    ("G", "7-5-2-3", "4312"),
    ("A", "9-7-4-5", "4312"),
    ("B", "11-9-6-7", "4312"),
    ("G", "x-5-2-3", ""),
    ("C", "5-2-3-3", ""),
    ("D", "7-4-5-5", ""),
]
OTHERS = {
    "ukulele": "C 0003, F 2010, G 0232, D 2220, A 2100, Am 2000, Em 0432, Bm 4222, B7 2322, D7 2223, E7 1202",
    "baritone ukulele": "G 0003, C 2010, D 0232, A 2220, E 2100, Em 2000, Am 2210, Bm 4432",
    "five-string banjo": "G 00000, C 02012, D x0234, Em 02002, Am x2212, F x3213",
    "guitar": "G 320003, C x32010, D xx0232, A x02220, E 022100, Em 022000, Am x02210, F xx3211, Bm x24432, B7 x21202, "
    "D7 xx0212, E7 020100, A7 x02020",
}
# chord: fits, colour, clash among the open G D A E. Tag [X].
RING = {
    "G": ("G D", "A E", ""),
    "C": ("G E", "D A", ""),
    "D": ("D A", "E", "G"),
    "A": ("A E", "G", "D"),
    "E": ("E", "D", "G A"),
    "Em": ("G E", "D A", ""),
    "Am": ("A E", "G D", ""),
    "Bm": ("D", "A E", "G"),
    "F": ("A", "G D", "E"),
    "B": ("", "A", "G D E"),
}
# key: the open strings of the rule of thumb. Tag [C].
KEYS = {"A": "A E", "G": "G D", "D": "D A"}

with open(FIXTURES / "chords.tsv", encoding="utf-8") as table:
    CHORDS = {row["symbol"]: row["notes"].split() for row in csv.DictReader(table, delimiter="\t")}
DEGREES = ["root", "third", "fifth", "seventh"]


def classes(chord):
    """The pitch classes of a chord, in chord order."""
    return [m % 12 for m in tonal([{"ask": "midi", "note": n + "4"} for n in CHORDS[chord]])]


def row(instrument, chord, kind, frets, fingers, tag):
    strings = zip(TUNINGS[instrument], frets)
    sounding = [o + int(f) for o, f in strings if f != "x"]
    wanted = classes(chord)
    wrong = [m for m in sounding if m % 12 not in wanted]
    assert not wrong, (instrument, chord, frets, wrong)
    missing = [d for d, c in zip(DEGREES, wanted) if c not in {m % 12 for m in sounding}]
    return (instrument, chord, kind, " ".join(frets), " ".join(fingers), " ".join(map(str, sounding)), " ".join(missing), tag)


def fifth_lower(chord):
    root, suffix = (chord[:2], chord[2:]) if chord[1:2] in ("#", "b") else (chord[:1], chord[1:])
    return tonal([{"ask": "up", "note": root, "interval": "-5P"}])[0] + suffix


def shapes():
    rows = []
    for instrument, name, tag in (
        ("mandolin", lambda c: c, "C"),
        ("octave mandolin", lambda c: c, "X"),
        ("tenor banjo", fifth_lower, "X"),
    ):
        for chord, listed in MANDOLIN.items():
            for shape in listed.split():
                frets, fingers = shape.split(":")
                rows.append(row(instrument, name(chord), "open", frets, fingers, tag))
        for chord, frets, fingers in CHOPS:
            rows.append(row(instrument, name(chord), "chop", frets.split("-"), fingers, tag))
    for instrument, listed in OTHERS.items():
        for entry in listed.split(", "):
            chord, frets = entry.split()
            rows.append(row(instrument, chord, "open", frets, "", "C"))
    columns = ["instrument", "chord", "kind", "frets", "fingers", "midi", "missing", "tag"]
    write_tsv("trade-shapes.tsv", columns, rows)


def ring():
    rows = []
    for chord, (fits, colour, clash) in RING.items():
        wanted = classes(chord)
        for kind, notes in (("fits", fits), ("colour", colour), ("clash", clash)):
            for note in notes.split():
                c = {"G": 7, "D": 2, "A": 9, "E": 4}[note]
                near = any((c - w) % 12 in (1, 11) for w in wanted)
                assert kind == ("fits" if c in wanted else "clash" if near else "colour"), (chord, note)
        rows.append((chord, fits, colour, clash, "X"))
    write_tsv("trade-ring.tsv", ["chord", "fits", "colour", "clash", "tag"], rows)
    write_tsv("trade-keys.tsv", ["key", "open", "tag"], [(k, v, "C") for k, v in KEYS.items()])


shapes()
ring()
