"""The chords of rendered tracks, found blind by a general library.

    cargo build --release --no-default-features
    python band_chroma.py target/release/fourcourse songbook/*.abc

librosa 0.11.0 (ISC) makes constant-Q chroma of each track; the triad whose three notes stand out most (T. Fujishima, 1999) is
taken for the chord of each span in which the chart has one chord for at least half a bar. Prints a line a tune and the
sum; the sum is in fixtures/README.md.
"""

import json
import subprocess
import sys
import tempfile
from fractions import Fraction
from pathlib import Path

import librosa
import numpy as np

NOTES = ["C", "C#", "D", "D#", "E", "F", "F#", "G", "G#", "A", "A#", "B"]
FLATS = {"Db": "C#", "Eb": "D#", "Gb": "F#", "Ab": "G#", "Bb": "A#", "Cb": "B", "Fb": "E"}
QUARTERS = 120  # a minute


def triad(symbol):
    root = symbol[:2] if symbol[1:2] in ("#", "b") else symbol[:1]
    rest = symbol[len(root):]
    minor = rest.startswith("m") and not rest.startswith("maj")
    return NOTES.index(FLATS.get(root, root)), minor


def heard(chroma):
    fits = {}
    spread = chroma - chroma.mean()
    for root in range(12):
        for minor in (False, True):
            third = 3 if minor else 4
            fits[root, minor] = spread[[root, (root + third) % 12, (root + 7) % 12]].sum()
    return max(fits, key=fits.get)


def tune(program, path, wav):
    read = subprocess.run([program, "read", path, "--json", "--played"], capture_output=True, text=True, check=True)
    chart = json.loads(read.stdout)[0]
    beat = next(line for line in Path(path).read_text().splitlines() if line.startswith("Q:"))
    beat = 4 * Fraction(beat[2:].split("=")[0])  # what the tune's own tempo counts, in quarters
    bpm = float(QUARTERS / beat)
    arguments = ["--tempo", str(bpm), "--times", "1", "--ending", "plain"]
    subprocess.run([program, "band", path, *arguments, "--out", wav], check=True)
    sound, rate = librosa.load(wav, sr=22050, mono=True)
    chroma = librosa.feature.chroma_cqt(y=sound, sr=rate, hop_length=512)
    # The tune begins after a bar of count and the part of a bar before its pickup.
    count = 4 * Fraction(chart["metre"])
    pickup = Fraction(chart.get("pickup") or 0)
    begin = count + ((count - pickup) if pickup else 0)
    chords = chart["chords"]
    found = asked = 0
    for this, after in zip(chords, chords[1:]):
        start, end = Fraction(this["at"]), Fraction(after["at"])
        if end - start < count / 2 or this["symbol"] == "N.C.":
            continue
        asked += 1
        frames = [round(float((begin + at) * 60 / QUARTERS) * rate / 512) for at in (start, end)]
        found += heard(chroma[:, frames[0]:frames[1]].mean(axis=1)) == triad(this["symbol"])
    return found, asked


def main():
    program, *paths = sys.argv[1:]
    sums = np.zeros(2, int)
    with tempfile.TemporaryDirectory() as folder:
        for path in paths:
            result = tune(program, path, str(Path(folder) / "track.wav"))
            print(f"{Path(path).stem}\t{result[0]}\t{result[1]}")
            sums += result
    print(f"all\t{sums[0]}\t{sums[1]}")


main()
