"""keys.tsv and intervals.tsv: key signatures, scales and intervals on which music21 and tonal agree."""

from music21 import interval, key, pitch

from common import ROOTS, from_music21, to_music21, tonal, triple, write_tsv

MODES = "major minor dorian phrygian lydian mixolydian locrian".split()
TONICS = [letter + sign for letter in "CDEFGAB" for sign in ("", "#", "b")]
# tonal's names; a minus sign goes down.
UP = "1P 2m 2M 2A 3m 3M 4P 4A 5d 5P 5A 6m 6M 7d 7m 7M 8P 9m 9M 9A 11P 11A 13m 13M".split()
DOWN = "2m 2M 3m 3M 4P 5P 6m 7m 8P".split()


def signed(notes):
    """Sharps less flats of a scale: its signature, however it is written."""
    return sum(n.count("#") - n[1:].count("b") for n in notes)


def keys():
    asked = [(t, m) for m in MODES for t in TONICS]
    scales = tonal([{"ask": "scale", "tonic": t, "mode": m} for t, m in asked])
    rows = []
    for (tonic, mode), notes in zip(asked, scales):
        theirs = key.Key(to_music21(tonic), mode)
        other = [from_music21(p.name) for p in theirs.pitches[:7]]
        if abs(theirs.sharps) > 7:
            continue
        assert notes == other and signed(notes) == theirs.sharps, (tonic, mode, notes, other)
        rows.append((tonic, mode, theirs.sharps, " ".join(notes)))
    rows.sort(key=lambda r: (MODES.index(r[1]), r[2]))
    write_tsv("keys.tsv", ["tonic", "mode", "signature", "scale"], rows)


def intervals():
    wanted = UP + ["-" + d for d in DOWN]
    asked = [(root, name) for root in ROOTS for name in wanted]
    theirs = tonal([{"ask": "up", "note": r + "4", "interval": i} for r, i in asked])
    sizes = dict(zip(wanted, tonal([{"ask": "semitones", "interval": i} for i in wanted])))
    rows, apart = [], []
    for (root, name), end in zip(asked, theirs):
        down, number, quality = name[0] == "-", name.strip("-")[:-1], name[-1]
        # music21 writes the quality first, and the sign between.
        step = interval.Interval(f"{quality}{'-' if down else ''}{number}")
        other = step.transposePitch(pitch.Pitch(to_music21(root) + "4"))
        spelled = from_music21(other.nameWithOctave)
        house = f"{'-' if down else ''}{quality}{number}"
        if triple([end, spelled]):
            continue
        if spelled != end or step.semitones != sizes[name]:
            apart.append((root, name, end, spelled))
            continue
        rows.append((root + "4", house, sizes[name], end))
    assert not apart, apart
    write_tsv("intervals.tsv", ["from", "interval", "semitones", "to"], rows)


keys()
intervals()
