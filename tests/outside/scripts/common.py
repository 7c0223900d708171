"""What the fixture scripts share: where things are, ASCII spelling, and a bridge to tonal.

Run the scripts from a folder that holds node_modules with tonal 6.4.3 (and, for shapes.py,
@tombatossals/chords-db 0.5.1) with a Python that has music21 10.5.0; see ../fixtures/README.md.
"""

import functools
import json
import pathlib
import subprocess

SCRIPTS = pathlib.Path(__file__).resolve().parent
FIXTURES = SCRIPTS.parent / "fixtures"

# Every root that a chart may show; E#, B#, Fb and double accidentals are left out as not sensible.
ROOTS = "C C# Db D D# Eb E F F# Gb G G# Ab A A# Bb B Cb".split()


@functools.cache
def bridge():
    """The one node process that is asked."""
    return subprocess.Popen(
        ["node", str(SCRIPTS / "tonal.mjs")], stdin=subprocess.PIPE, stdout=subprocess.PIPE, text=True, bufsize=1
    )


def tonal(questions):
    """The answers of tonal to a list of {"ask": ...} questions, in order."""
    process = bridge()
    process.stdin.write(json.dumps(questions) + "\n")
    return json.loads(process.stdout.readline())


def to_music21(name):
    """A note name with ASCII accidentals as music21 wants it: a flat is a minus sign."""
    return name[0] + name[1:].replace("b", "-")


def from_music21(name):
    """A music21 note name with ASCII accidentals."""
    return name.replace("-", "b")


def triple(notes):
    """Whether any note carries more than a double accidental."""
    return any("###" in n or "bbb" in n for n in notes)


def write_tsv(name, columns, rows):
    """A tab-separated fixture with one heading line."""
    lines = ["\t".join(columns)] + ["\t".join(str(c) for c in row) for row in rows]
    (FIXTURES / name).write_text("\n".join(lines) + "\n", encoding="utf-8")
    print(f"{name}: {len(rows)} rows")
