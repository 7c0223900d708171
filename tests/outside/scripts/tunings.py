"""tunings.tsv: tunings that players of an instrument share, note by note.

The list is typed in by hand. The script adds which entry of the tuning table of mingus (mingus/extra/tunings.py) says the
same; `C` is common practice without a source.
"""

from mingus.extra import tunings

from common import FIXTURES, write_tsv

# Instrument: its name in mingus, tunings with octaves, the first course first.
TUNINGS = {
    "mandolin": (
        ["Mandolin", "Fiddle"],
        ["G3 D4 A4 E5", "A3 E4 A4 E5", "G3 D4 G4 D5", "G3 D4 A4 D5", "A3 D4 A4 E5"],
    ),
    "fiddle": (
        ["Fiddle"],
        ["G3 D4 A4 E5", "A3 E4 A4 E5", "G3 D4 G4 D5", "G3 D4 A4 D5", "A3 D4 A4 E5"],
    ),
    "octave-mandolin": (
        ["Mandolin (Octave)", "Irish bouzouki"],
        ["G2 D3 A3 E4", "G2 D3 A3 D4", "A2 D3 A3 D4"],
    ),
    "tenor-banjo": (["Banjo (tenor)"], ["C3 G3 D4 A4", "G2 D3 A3 E4"]),
    "tenor-guitar": (["Tenor guitar"], ["C3 G3 D4 A4", "G2 D3 A3 E4", "D3 G3 B3 E4"]),
    "guitar": (
        ["Guitar"],
        ["E2 A2 D3 G3 B3 E4", "D2 A2 D3 G3 B3 E4", "D2 A2 D3 G3 A3 D4", "D2 G2 D3 G3 B3 D4"],
    ),
    "ukulele": (["Ukulele"], ["G4 C4 E4 A4", "G3 C4 E4 A4", "A4 D4 F#4 B4"]),
    "banjo": (
        ["Banjo (5-string)"],
        ["G4 D3 G3 B3 D4", "G4 C3 G3 C4 D4", "G4 D3 G3 C4 D4", "G4 C3 G3 B3 D4", "F#4 D3 F#3 A3 D4"],
    ),
    "bass": (["Bass guitar"], ["E1 A1 D2 G2", "D1 A1 D2 G2"]),
}


def plain(tuning):
    """A tuning of mingus as text; of a pair the lower string."""
    courses = [min(course) if isinstance(course, list) else course for course in tuning.tuning]
    return " ".join(f"{note.name}{note.octave}" for note in courses)


rows = []
for instrument, (names, listed) in TUNINGS.items():
    known = {}
    for name in names:
        for tuning in tunings.get_tunings(name):
            # A name is searched for by its beginning.
            if tuning.instrument == name:
                known.setdefault(plain(tuning), f"mingus: {name}, {tuning.description.strip()}")
    for notes in listed:
        rows.append([instrument, notes, known.get(notes, "C")])
write_tsv("tunings.tsv", ["instrument", "notes", "source"], rows)
