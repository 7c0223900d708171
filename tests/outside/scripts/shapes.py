"""chords-db-guitar.json, chords-db-ukulele.json, chords-db-wrong.tsv: shapes from the open data set @tombatossals/chords-db.

Every position of a known quality is checked against chords.tsv; only right ones go into the samples.
"""

import csv
import json
import pathlib

from common import FIXTURES, tonal, write_tsv

DATA = pathlib.Path("node_modules/@tombatossals/chords-db/lib")
OPEN = {"guitar": [40, 45, 50, 55, 59, 64], "ukulele": [67, 60, 64, 69]}
# The data set's suffix, ours, and how many positions of each key go into the sample.
SUFFIXES = [
    ("major", "", 4),
    ("minor", "m", 4),
    ("7", "7", 4),
    ("m7", "m7", 4),
    ("maj7", "maj7", 4),
    ("6", "6", 2),
    ("m6", "m6", 2),
    ("69", "6/9", 2),
    ("sus2", "sus2", 2),
    ("sus4", "sus4", 2),
    ("7sus4", "7sus4", 2),
    ("dim", "dim", 2),
    ("dim7", "dim7", 2),
    ("m7b5", "m7b5", 2),
    ("aug", "aug", 2),
    ("add9", "add9", 2),
    ("9", "9", 2),
    # Checked, but not in the sample.
    ("7b9", "7b9", 0),
    ("madd9", "madd9", 0),
    ("mmaj7", "mMaj7", 0),
    ("maj9", "maj9", 0),
    ("m9", "m9", 0),
    ("m11", "m11", 0),
    ("aug7", "aug7", 0),
    ("aug9", "9#5", 0),
    ("7b5", "7b5", 0),
    ("9b5", "9b5", 0),
    ("7#9", "7#9", 0),
    ("maj7#5", "maj7#5", 0),
    ("mmaj9", "mMaj9", 0),
]

with open(FIXTURES / "chords.tsv", encoding="utf-8") as table:
    CHORDS = {row["symbol"]: row["notes"].split() for row in csv.DictReader(table, delimiter="\t")}


def faults(position, frets, midi, wanted):
    """What is wrong with a position, in words; empty when nothing is."""
    said = []
    foreign = sorted({m for m in midi if m % 12 not in wanted})
    if foreign:
        said.append("notes outside the chord: midi " + " ".join(map(str, foreign)))
    if position["midi"] != midi:
        said.append("its own midi " + " ".join(map(str, position["midi"])) + " is not what the frets sound")
    fingers = position["fingers"]
    if len(fingers) != len(frets) or any((g > 0) != (f > 0) for g, f in zip(fingers, frets)):
        said.append("fingers " + " ".join(map(str, fingers)) + " do not go with the frets")
    for finger in range(1, 5):
        if len({f for g, f in zip(fingers, frets) if g == finger}) > 1:
            said.append(f"finger {finger} on two frets")
    return said


def main():
    wrong = []
    for instrument, strings in OPEN.items():
        data = json.loads((DATA / f"{instrument}.json").read_text(encoding="utf-8"))
        sample, checked, bad = [], 0, 0
        for entry in [c for chords in data["chords"].values() for c in chords]:
            known = [s for s in SUFFIXES if s[0] == entry["suffix"]]
            symbol = entry["key"] + known[0][1] if known else None
            if symbol not in CHORDS:
                continue
            wanted = [m % 12 for m in tonal([{"ask": "midi", "note": n + "4"} for n in CHORDS[symbol]])]
            good = []
            for number, position in enumerate(entry["positions"], 1):
                checked += 1
                base = position["baseFret"] - 1
                frets = [f + base if f > 0 else f for f in position["frets"]]
                midi = [o + f for o, f in zip(strings, frets) if f >= 0]
                said = faults(position, frets, midi, wanted)
                if said:
                    bad += 1
                    place = (instrument, entry["key"], entry["suffix"], number)
                    wrong.append((*place, " ".join("x" if f < 0 else str(f) for f in frets), "; ".join(said)))
                    continue
                barres = [b + base for b in position["barres"]]
                missing = [n for n, c in zip(CHORDS[symbol], wanted) if c not in {m % 12 for m in midi}]
                right = {"frets": frets, "fingers": position["fingers"], "barres": barres}
                good.append({**right, "midi": midi, "missing": missing})
            if good[: known[0][2]]:
                head = {"chord": symbol, "key": entry["key"], "suffix": entry["suffix"]}
                sample.append({**head, "positions": good[: known[0][2]]})
        lines = ",\n".join(json.dumps(c, separators=(",", ":")) for c in sample)
        (FIXTURES / f"chords-db-{instrument}.json").write_text(f"[\n{lines}\n]\n", encoding="utf-8")
        print(instrument, "checked", checked, "wrong", bad, "in the sample", sum(len(c["positions"]) for c in sample))
    write_tsv("chords-db-wrong.tsv", ["instrument", "key", "suffix", "position", "frets", "wrong"], wrong)


main()
