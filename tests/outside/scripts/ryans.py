"""ryans/ryans.abc and ryans/ryans-music21.jsonl: every fourth tune of the Ryan collection, and what music21 reads in it."""

import contextlib
import io
import json
import pathlib
import re
from fractions import Fraction

import music21
from music21 import converter, harmony, key

import plain_abc
from common import FIXTURES, from_music21

CORPUS = pathlib.Path(music21.__file__).parent / "corpus" / "ryansMammoth"
EVERY = 4


def by_music21(text):
    """Key and notes as music21 reads them, repeats as written, ties joined, grace notes left out."""
    # Without this line accidentals are not carried to the bar line.
    score = converter.parseData("%abc-2.1\n" + text, format="abc")
    part = score.parts[0].stripTies()
    notes = []
    for n in part.recurse().notes:
        if n.duration.isGrace or isinstance(n, harmony.Harmony):
            continue
        at = n.getOffsetInHierarchy(part)
        for pitch in n.pitches:
            notes.append((Fraction(at), Fraction(n.duration.quarterLength), int(pitch.ps)))
    signature = part.recurse().getElementsByClass(key.KeySignature).first()
    tonic = from_music21(signature.tonic.name) if isinstance(signature, key.Key) else None
    mode = signature.mode if isinstance(signature, key.Key) else None
    return tonic, mode, sorted(notes)


def field(text, letter):
    found = re.search(rf"^{letter}:(.*?)(?<!\\)(?:%.*)?$", text, re.MULTILINE)
    return found[1].strip() if found else None


def difference(theirs, ours):
    """Where two readings part, in words."""
    for i, (a, b) in enumerate(zip(theirs, ours)):
        if a != b:
            return f"note {i + 1}: music21 {' '.join(map(str, a))}, plain reader {' '.join(map(str, b))}"
    return f"music21 has {len(theirs)} notes, plain reader {len(ours)}"


def main():
    files = sorted(CORPUS.glob("*.abc"), key=lambda p: p.name)[::EVERY]
    packed, lines, doubts = [], [], 0
    for x, file in enumerate(files, 1):
        text = file.read_text(encoding="utf-8", errors="replace").strip()
        # A tune ends at a blank line, so none may stand inside.
        text = re.sub(r"\n\s*\n", "\n", text.replace("\r", ""))
        text = re.sub(r"^X:.*", f"X:{x}", text, count=1, flags=re.MULTILINE)
        packed.append(text + "\n")
        line = {"file": file.name, "x": x, "title": field(text, "T"), "metre": field(text, "M")}
        try:
            with contextlib.redirect_stderr(io.StringIO()):
                tonic, mode, theirs = by_music21(text)
            line["key"] = {"tonic": tonic, "mode": mode}
        except Exception as why:  # music21 gives up on some with whatever it trips over.
            theirs, line["key"] = None, None
            line["doubt"] = f"music21 gives up: {type(why).__name__}"
        ours, strange = plain_abc.read(text)
        if theirs is not None and theirs != ours:
            line["doubt"] = difference(theirs, ours)
        line["by"] = "plain reader" if "doubt" in line else "both"
        if strange:
            line["strange"] = sorted(set(strange))
        doubts += "doubt" in line
        line["notes"] = [[str(at), str(lasts), midi] for at, lasts, midi in ours]
        lines.append(json.dumps(line, ensure_ascii=False, separators=(",", ":")))
    folder = FIXTURES / "ryans"
    folder.mkdir(exist_ok=True)
    (folder / "ryans.abc").write_text("\n".join(packed), encoding="utf-8")
    (folder / "ryans-music21.jsonl").write_text("\n".join(lines) + "\n", encoding="utf-8")
    print(len(files), "tunes,", doubts, "in doubt,", sum(l.count("],[") for l in lines), "notes")


main()
