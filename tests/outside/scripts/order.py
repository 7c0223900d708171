"""order.tsv: in which order music21 plays bars with repeats, endings and jumps.

Each tune is written in words: a bar is its name, signs stand as on paper (see ../fixtures/README.md). Left out are
tunes with both endings and jumps: there music21 10.5.0 forgets the endings (`|: a [1 b :| [2 c fine || d D.C.fine`
becomes a b a b c d a b c).
"""

from common import write_tsv
from music21 import bar, meter, note, repeat, spanner, stream

TUNES = """
|: a b :| c
|: a b :| |: c d :|
|: a ::| b
a b :| c
a b :| |: c d :| e
|: a b [1 c :| [2 d || e
|: a [1 b c :| [2 d e || f
|: a [1 b :| [2 c :| |: d [1 e :| [2 f :|
|: a [1 b :| [2 c :| [3 d || e
|: a [1,2 b :| [3 c || d
|: a [1,2,3 b :| [4 c || d
a b fine c d D.C.fine
a b c D.C.
|: a :| |: b :| D.C.
|: a :| b fine |: c :| D.C.fine
a b coda c D.C.coda || coda d e
|: a b :| coda c D.C.coda || coda d
a segno b c D.S.
a segno b fine c d D.S.fine
a segno b coda c d D.S.coda || coda e
|: a :| segno |: b :| coda c D.S.coda || coda d
segno a b fine c D.S.fine
""".strip().splitlines()

JUMPS = {
    "fine": repeat.Fine,
    "D.C.": repeat.DaCapo,
    "D.C.fine": repeat.DaCapoAlFine,
    "D.C.coda": repeat.DaCapoAlCoda,
    "D.S.": repeat.DalSegno,
    "D.S.fine": repeat.DalSegnoAlFine,
    "D.S.coda": repeat.DalSegnoAlCoda,
}


def built(text):
    part = stream.Part()
    measures, before, ending, brackets, leaves = [], [], None, [], False
    for word in text.split():
        last = measures[-1] if measures else None
        if word == "coda" and not leaves:
            # One leaves at the sign between two bars; music21 plays the whole bar that bears it.
            last.append(repeat.Coda())
            leaves = True
        elif word in ("|:", "segno", "coda") or word[0] == "[":
            before.append(word)
        elif word in (":|", "::|"):
            last.rightBarline = bar.Repeat(direction="end", times=len(word))
            ending = None
        elif word == "||":
            last.rightBarline = bar.Barline("double")
            ending = None
        elif word in JUMPS:
            last.append(JUMPS[word]())
        else:
            measure = stream.Measure(number=len(measures) + 1)
            if not measures:
                measure.append(meter.TimeSignature("4/4"))
            for sign in before:
                if sign == "|:":
                    measure.leftBarline = bar.Repeat(direction="start")
                elif sign == "segno":
                    measure.insert(0, repeat.Segno())
                elif sign == "coda":
                    measure.insert(0, repeat.Coda())
                else:
                    ending = spanner.RepeatBracket(number=sign[1:])
                    brackets.append(ending)
            before = []
            whole = note.Note("C4", type="whole")
            whole.lyric = word
            measure.append(whole)
            measures.append(measure)
            if ending is not None:
                ending.addSpannedElements(measure)
    part.append(measures)
    for each in brackets:
        part.insert(0, each)
    return part


def main():
    rows = []
    for text in TUNES:
        expander = repeat.Expander(built(text))
        try:
            played = expander.process()
        except repeat.ExpanderException as trouble:
            print(f"left out: {text}: {trouble}")
            continue
        rows.append((text, " ".join(n.lyric for n in played.flatten().notes)))
    write_tsv("order.tsv", ("written", "played"), rows)


main()
