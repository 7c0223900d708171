"""capo.tsv: which key's shapes a capo makes sound a key; reads.tsv: what transposing instruments read."""

import pathlib

import music21
from music21 import converter, instrument, interval, key, pitch

from common import from_music21, to_music21, write_tsv

TONICS = "C Db D Eb E F F# G Ab A Bb B".split()
OPEN = {pitch.Pitch(n).pitchClass: n for n in "GCDAE"}


def capo():
    """A capo raises what is fingered by a semitone a fret, so the shapes are those of the key so much lower."""
    rows = []
    for tonic in TONICS:
        for fret in range(12):
            held = pitch.Pitch(to_music21(tonic) + "4").transpose(-fret)
            if held.pitchClass in OPEN:
                rows.append((tonic, fret, OPEN[held.pitchClass]))
    write_tsv("capo.tsv", ["key", "fret", "shapes"], rows)


# music21's instruments, the pitch they read in, and octaves that they read higher than that.
INSTRUMENTS = [
    (instrument.Clarinet, "Bb", 0), (instrument.BassClarinet, "Bb", 1), (instrument.SopranoSaxophone, "Bb", 0),
    (instrument.TenorSaxophone, "Bb", 1), (instrument.Trumpet, "Bb", 0), (instrument.AltoSaxophone, "Eb", 0),
    (instrument.BaritoneSaxophone, "Eb", 1), (instrument.Horn, "F", 0), (instrument.EnglishHorn, "F", 0),
]


def reads():
    rows = []
    for kind, pitched, octaves in INSTRUMENTS:
        down = kind().transposition
        for tonic in TONICS:
            sounding = pitch.Pitch(to_music21(tonic) + "4")
            written = down.reverse().transposePitch(sounding)
            fifths = key.Key(written.name).sharps
            rows.append((kind.__name__, pitched, octaves, f"{tonic}4", from_music21(written.nameWithOctave), fifths))
    # The LilyPond project's MusicXML test suite, 72a, as music21 carries it: C major for three instruments.
    suite = pathlib.Path(music21.__file__).parent / "musicxml" / "lilypondTestSuite"
    score = converter.parse(suite / "72a-TransposingInstruments.xml")
    for part, pitched in zip(score.parts, ["Bb", "Eb", "C"]):
        signature = part.recurse().getElementsByClass(key.KeySignature).first()
        sounding = part.toSoundingPitch()
        for there, here in zip(sounding.flatten().notes, part.flatten().notes):
            rows.append((f"MusicXML 72a: {part.partName}", pitched, 0, from_music21(there.nameWithOctave),
                         from_music21(here.nameWithOctave), signature.sharps))
    write_tsv("reads.tsv", ["instrument", "reads", "octaves", "sounding", "written", "signature"], rows)


capo()
reads()
