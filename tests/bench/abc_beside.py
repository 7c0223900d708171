"""Reads a tune book with music21, as far as its notes and chords, and prints tunes a second."""

import sys
import time

try:
    from music21 import VERSION_STR, abcFormat
    from music21.abcFormat import translate
except ImportError:
    sys.exit("music21 is not installed here: nothing to compare with (pip install music21==10.5.0)")

with open(sys.argv[1], encoding="utf-8") as file:
    book = file.read()
most = int(sys.argv[2])
started = time.perf_counter()
handlers = list(abcFormat.ABCFile().readstr(book).splitByReferenceNumber().values())[:most]
for handler in handlers:
    translate.abcToStreamScore(handler)
seconds = time.perf_counter() - started
print(f"music21 {VERSION_STR}, the first {len(handlers)} tunes: {len(handlers) / seconds:.0f} tunes a second")
