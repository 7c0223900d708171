"""names.tsv: spellings of chord symbols met in the wild, and the symbol of chords.tsv that each means.

The list is common practice, written by hand. The script adds which library reads a spelling the same way.
"""

import csv

from music21 import harmony

from common import FIXTURES, from_music21, to_music21, tonal, write_tsv

# Canonical suffix (the one of chords.tsv): suffixes in the wild.
SPELLINGS = {
    "": ["M", "maj", "Maj", "ma", "Δ", "^"],
    "m": ["min", "mi", "-", "Min", "minor"],
    "dim": ["°", "o", "º", "dim"],
    "dim7": ["°7", "o7", "º7", "dim7"],
    "m7b5": ["ø", "ø7", "Ø", "-7b5", "min7b5", "m7-5", "mi7b5", "m7(b5)", "m7♭5", "m7(♭5)"],
    "aug": ["+", "aug", "+5", "(#5)", "aug5"],
    "aug7": ["+7", "7+", "7aug", "aug7"],
    "7#5": ["7#5", "7(#5)", "7+5", "7♯5"],
    "sus2": ["sus2", "(sus2)"],
    "sus4": ["sus", "sus4", "(sus4)"],
    "5": ["5", "(no3)", "no3"],
    "6": ["6", "maj6", "M6", "add6"],
    "m6": ["m6", "-6", "min6", "mi6"],
    "6/9": ["69", "6/9", "6add9", "6(add9)", "M69", "maj6/9"],
    "7": ["7", "dom7"],
    "maj7": ["M7", "maj7", "Maj7", "MAJ7", "ma7", "Ma7", "Δ7", "Δ", "△7", "△", "^7", "j7", "(maj7)", "major7"],
    "m7": ["m7", "min7", "Min7", "mi7", "-7"],
    "mMaj7": ["mM7", "m(maj7)", "m/maj7", "mMaj7", "-Δ7", "-maj7", "min(maj7)", "m(M7)", "mΔ", "m#7"],
    "7sus4": ["7sus", "7sus4", "sus7", "7(sus4)", "7(sus)"],
    "add9": ["add9", "(add9)", "add2", "2", "(add2)", "Madd9"],
    "madd9": ["madd9", "m(add9)", "m(add2)", "madd2"],
    "9": ["9", "7(9)", "7add9"],
    "maj9": ["maj9", "M9", "Maj9", "Δ9", "^9", "maj7(9)", "maj7add9", "ma9"],
    "m9": ["m9", "min9", "-9", "mi9", "m7(9)"],
    "11": ["11"],
    "m11": ["m11", "min11", "-11"],
    "13": ["13", "7(13)"],
    "maj13": ["maj13", "M13", "Maj13", "^13", "Δ13"],
    "m13": ["m13", "-13", "min13"],
    "7b5": ["7b5", "7(b5)", "7-5", "7♭5"],
    "7b9": ["7b9", "7(b9)", "7-9", "7♭9", "7(♭9)"],
    "7#9": ["7#9", "7(#9)", "7+9", "7♯9", "7(♯9)"],
    "7#11": ["7#11", "7(#11)", "7+11", "7♯11"],
    "maj7#11": ["maj7#11", "maj7(#11)", "Δ#11", "M7#11", "maj7♯11"],
}
# Readers differ on these: some take the triangle alone for the triad, most for the major seventh.
AMBIGUOUS = {("", "Δ"), ("", "^")}
ROOTS = {"A": "A", "Bb": "Bb", "F#": "F#", "B♭": "Bb", "F♯": "F#"}
BASSES = [
    ("Bb/D", "Bb/D"),
    ("G/B", "G/B"),
    ("D/F#", "D/F#"),
    ("D/F♯", "D/F#"),
    ("C/Bb", "C/Bb"),
    ("E♭/B♭", "Eb/Bb"),
    ("Am/G", "Am/G"),
    ("Am7/G", "Am7/G"),
    ("A-7/G", "Am7/G"),
    ("C6/9/E", "C6/9/E"),
    ("D7/A", "D7/A"),
    ("F/G", "F/G"),
    ("G / B", "G/B"),
]
NO_CHORD = ["N.C.", "NC", "N.C", "n.c.", "N/C", "No chord"]

with open(FIXTURES / "chords.tsv", encoding="utf-8") as table:
    NOTES = {row["symbol"]: set(row["notes"].split()) for row in csv.DictReader(table, delimiter="\t")}
with open(FIXTURES / "chords-disagree.tsv", encoding="utf-8") as table:
    BOTH = {
        row["symbol"]: [set(row["music21"].split()), set(row["tonal"].split())]
        for row in csv.DictReader(table, delimiter="\t")
    }


def by_music21(root, suffix):
    """The notes music21 reads, none if it gives up."""
    try:
        pitches = harmony.ChordSymbol(to_music21(root) + suffix).pitches
    except Exception:  # It raises whatever its reading happens to trip over.
        return set()
    return {from_music21(p.name) for p in pitches}


def main():
    listed = []
    for means, spellings in SPELLINGS.items():
        for suffix in spellings:
            if (means, suffix) in AMBIGUOUS:
                continue
            for written, root in ROOTS.items():
                # The typographic roots need not meet every suffix.
                if written in ROOTS.values() or suffix in ("-", "M7", "ø", "°7", "7", "m7", "7♭9"):
                    listed.append((written + suffix, root, suffix, root + means))
    read = tonal([{"ask": "chord", "symbol": root + suffix} for _, root, suffix, _ in listed])
    rows = []
    for (written, root, suffix, means), theirs in zip(listed, read):
        wanted = [NOTES[means]] if means in NOTES else BOTH[means]
        sources = []
        if by_music21(root, suffix) in wanted:
            sources.append("music21")
        if set(theirs) in wanted:
            sources.append("tonal")
        rows.append((written, means, " ".join(sources) or "C"))
    rows += [(written, means, "C") for written, means in BASSES]
    rows += [(written, "N.C.", "C") for written in NO_CHORD]
    write_tsv("names.tsv", ["written", "means", "sources"], rows)


main()
