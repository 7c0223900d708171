"""chords.tsv and chords-disagree.tsv: how music21 and tonal spell every chord of the vocabulary."""

from music21 import harmony

from common import ROOTS, from_music21, to_music21, tonal, triple, write_tsv

# Our quality, the figure music21 is asked for, the name tonal is asked for.
QUALITIES = [
    ("", "", ""),
    ("m", "m", "m"),
    ("dim", "dim", "dim"),
    ("dim7", "dim7", "dim7"),
    ("m7b5", "m7b5", "m7b5"),
    ("aug", "aug", "aug"),
    ("aug7", "aug7", "aug7"),
    ("sus2", "sus2", "sus2"),
    ("sus4", "sus4", "sus4"),
    ("5", "power", "5"),
    ("6", "6", "6"),
    ("m6", "m6", "m6"),
    ("6/9", "6add9", "6/9"),
    ("7", "7", "7"),
    ("maj7", "maj7", "maj7"),
    ("m7", "m7", "m7"),
    ("mMaj7", "mM7", "mM7"),
    ("maj7#5", "+M7", "maj7#5"),
    ("7sus4", "7sus4", "7sus4"),
    ("add9", "add9", "add9"),
    ("madd9", "madd9", "madd9"),
    ("9", "9", "9"),
    ("maj9", "M9", "maj9"),
    ("m9", "m9", "m9"),
    ("mMaj9", "mM9", "mM9"),
    ("11", "11", "11"),
    ("m11", "m11", "m11"),
    ("13", "13", "13"),
    ("maj13", "M13", "maj13"),
    ("m13", "m13", "m13"),
    ("7b5", "dom7dim5", "7b5"),
    ("7#5", "7#5", "7#5"),
    ("7b9", "7b9", "7b9"),
    ("7#9", "7#9", "7#9"),
    ("7#5#9", "7#5#9", "7#5#9"),
    ("7#11", "7#11", "7#11"),
    ("maj7#11", "maj7#11", "maj7#11"),
    ("9b5", "9b5", "9b5"),
    ("9#5", "9#5", "9#5"),
]


def main():
    asked = [(r, q) for q in QUALITIES for r in ROOTS]
    theirs = tonal([{"ask": "chord", "symbol": r + q[2]} for r, q in asked])
    agreed, apart, left_out = [], [], 0
    for (root, (ours, figure, name)), notes in zip(asked, theirs):
        chord = harmony.ChordSymbol(to_music21(root) + figure)
        other = [from_music21(p.name) for p in chord.pitches]
        row = (root + ours, root, ours or "major")
        if triple(notes) or triple(other):
            left_out += 1
        elif set(notes) == set(other):
            sources = f"music21 {figure or 'major'}; tonal {name or 'major'}"
            agreed.append((*row, " ".join(notes), sources))
        else:
            apart.append((*row, " ".join(other), " ".join(notes)))
    write_tsv("chords.tsv", ["symbol", "root", "quality", "notes", "sources"], agreed)
    write_tsv("chords-disagree.tsv", ["symbol", "root", "quality", "music21", "tonal"], apart)
    print("left out for a triple accidental:", left_out)


main()
