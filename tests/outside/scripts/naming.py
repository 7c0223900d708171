"""chord-names.tsv: what music21 calls every set of notes over a bass.

For each set of two to seven pitch classes with C lowest music21 is asked for a chord symbol; the ones that it names
without additions or omissions of its own (`addD`, `omitG`) are kept.
"""

import itertools

from music21 import chord, harmony

from common import from_music21, write_tsv

# music21's chord kinds and our suffix; kinds that nobody writes on a chart (sixth chords of the theory books,
# Tristan) are left out.
KINDS = {
    "major": "", "minor": "m", "augmented": "aug", "diminished": "dim", "power": "5",
    "suspended-second": "sus2", "suspended-fourth": "sus4", "suspended-fourth-seventh": "7sus4",
    "major-sixth": "6", "minor-sixth": "m6", "dominant-seventh": "7", "major-seventh": "maj7", "minor-seventh": "m7",
    "minor-major-seventh": "m(maj7)", "diminished-seventh": "dim7", "half-diminished": "m7b5",
    "half-diminished-seventh": "m7b5", "augmented-seventh": "aug7", "augmented-major-seventh": "maj7#5",
    "seventh-flat-five": "7b5", "diminished-major-seventh": "dim(maj7)",
    "dominant-ninth": "9", "major-ninth": "maj9", "minor-ninth": "m9", "minor-major-ninth": "m(maj9)",
    "augmented-dominant-ninth": "9#5",
    "dominant-11th": "11", "minor-11th": "m11", "dominant-13th": "13", "major-13th": "maj13", "minor-13th": "m13",
}


def asked():
    for size in range(2, 8):
        for above in itertools.combinations(range(1, 12), size - 1):
            yield (0, *above)


def main():
    rows, unnamed, odd = [], 0, set()
    for notes in asked():
        heard = chord.Chord([60 + n for n in notes])
        figure, kind = harmony.chordSymbolFigureFromChord(heard, True)
        plain = not any(word in figure for word in ("add", "omit", "alter", "Cannot"))
        if not plain:
            unnamed += 1
            continue
        if kind not in KINDS:
            odd.add(kind)
            continue
        root = from_music21(heard.root().name)
        named = harmony.ChordSymbol(figure)
        full = {p.pitchClass for p in named.pitches}
        missing = sorted(full - set(notes))
        assert set(notes) <= full, (notes, figure)
        own = harmony.ChordSymbol(figure.split("/")[0])
        if 0 not in {p.pitchClass for p in own.pitches}:
            continue  # a power chord over a stranger
        rows.append((" ".join(map(str, notes)), heard.root().pitchClass, root, KINDS[kind] or "major",
                     " ".join(map(str, missing))))
    write_tsv("chord-names.tsv", ["notes", "root", "name", "kind", "missing"], rows)
    print("without a plain name:", unnamed, "kinds left out:", sorted(odd))


main()
