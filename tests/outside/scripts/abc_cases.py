"""abc-standard/cases.json: small snippets of ABC and what they come to by the standard 2.1 (December 2011).

What is expected was worked out by hand from the standard's rules. With --compare the script also asks plain_abc.py and
music21 and prints where they differ, for a person to judge; that changes nothing in the file.
"""

import json
import sys

import abc_more
from abc_case import CASES, EXAMPLE, MEMORY, PRACTICE, STANDARD, TABLE, case, tune
from common import FIXTURES


def pitch_and_length():
    case("octaves", "4.1", STANDARD, tune("C,, C, C c|c' c'' B, b"), sounds="C2 1, C3, C4, C5, C6, C7, B3, B5")
    case("octave marks add up", "4.1", STANDARD, tune("C,', c',"), sounds="C3 1, C5")
    case("all letters", "4.1", STANDARD, tune("CDEF|GABc"), sounds="C4 1, D4, E4, F4, G4, A4, B4, C5")
    case("accidentals", "4.2", STANDARD, tune("^C|=C|_C|^^C|__C"), sounds="C#4 1, C4, B3, D4, Bb3")
    case("accidental lasts to the bar line", "4.2", STANDARD, tune("^FFGF|F"), sounds="F#4 1, F#4, G4, F#4, F4")
    case("natural against the key", "4.2", STANDARD, tune("F=FF F|F", k="D"), sounds="F#4 1, F4, F4, F4, F#4")
    case("accidental ends at a repeat bar", "4.2", STANDARD, tune("|:^FF:|FF||"), sounds="F#4 1, F#4, F4, F4")
    case(
        "accidental holds at every octave", "11.3", STANDARD, tune("^FfF,F|f"),
        volatile=True, sounds="F#4 1, F#5, F#3, F#4, F5",
    )
    case(
        "propagate-accidentals not", "11.3", STANDARD, tune("^FFfF|F", head="%%propagate-accidentals not"),
        volatile=True, sounds="F#4 1, F4, F5, F4, F4",
    )
    case(
        "propagate-accidentals octave", "11.3", STANDARD, tune("^FFfF|F", head="%%propagate-accidentals octave"),
        volatile=True, sounds="F#4 1, F#4, F5, F#4, F4",
    )
    case("a tie carries the accidental over", "4.11", PRACTICE, tune("z2^F2-|F2F2"), sounds="r 2, F#4 4, F4 2")
    case(
        "lengths", "4.3", STANDARD, tune("A2A/2A/A//A//A3/2|A4|A3A/4A3/4", l="1/4"),
        sounds="A4 2, A4 1/2, A4 1/2, A4 1/4, A4 1/4, A4 3/2, A4 4, A4 3, A4 1/4, A4 3/4",
    )
    case("beams do not matter", "4.7", STANDARD, tune("A B``CD", l="1/8"), sounds="A4 1/2, B4, C4, D4")
    for metre, unit in [
        ("2/4", "1/4"), ("3/8", "1/4"), ("5/8", "1/4"), ("3/4", "1/2"), ("4/4", "1/2"), ("6/8", "1/2"), ("9/8", "1/2"),
        ("12/8", "1/2"), ("2/2", "1/2"), ("C", "1/2"), ("C|", "1/2"), ("none", "1/2"), (None, "1/2"),
    ]:
        case(
            f"no L: under M:{metre or '(absent)'}", "3.1.7", STANDARD if metre and metre[0].isdigit() else MEMORY, tune("CD2", m=metre, l=None),
            sounds=f"C4 {unit}, D4 {2 if unit == '1/2' else 1}/{2 if unit == '1/4' else 2}",
        )
    case("L: in the body", "3.2", STANDARD, tune("C2\nL:1/8\nC2[L:1/16]C2"), sounds="C4 2, C4 1, C4 1/2")
    case(
        "M: in the body leaves L: alone", "3.1.7", MEMORY, tune("CD|\nM:2/4\nCD|", l=None),
        sounds="C4 1/2, D4, C4, D4",
    )
    case(
        "broken rhythm", "4.4", STANDARD, tune("a>b a<b a>>b a<<b a>>>b", l="1/8"),
        sounds="A5 3/4, B5 1/4, A5 1/4, B5 3/4, A5 7/8, B5 1/8, A5 1/8, B5 7/8, A5 15/16, B5 1/16",
    )
    case("broken rhythm of longer notes", "4.4", STANDARD, tune("A2>B2", l="1/8"), sounds="A4 3/2, B4 1/2")
    case("broken rhythm with a rest", "4.4", STANDARD, tune("A>z z<A", l="1/8"), sounds="A4 3/4, r 1/4, r 1/4, A4 3/4")
    case(
        "broken rhythm round a grace note", "4.12", EXAMPLE, tune("A{g}<A A<{g}A", l="1/8"),
        sounds="A4 1/4, A4 3/4, A4 1/4, A4 3/4",
    )
    case("broken rhythm before a decoration", "4.4", STANDARD, tune('A>.B A>"D"B', l="1/8"), sounds="A4 3/4, B4 1/4, A4 3/4, B4 1/4")
    case("broken rhythm of chords", "4.4", STANDARD, tune("[CE]>[DF]", l="1/8"), sounds="C4+E4 3/4, D4+F4 1/4")
    case("rests", "4.5", STANDARD, tune("zA z2|x2 A2|z/2A3/2z2"), sounds="r 1, A4 1, r 2, r 2, A4 2, r 1/2, A4 3/2, r 2")
    case("bars of rest", "4.5", STANDARD, tune("A3|Z2|A3|Z|A3", m="3/4"), sounds="A4 3, r 6, A4 3, r 3, A4 3")
    case("invisible bars of rest", "4.5", STANDARD, tune("A3|X2|A3", m="3/4"), sounds="A4 3, r 6, A4 3")
    case("bars of rest after a change of metre", "4.5", STANDARD, tune("A3|[M:2/4]Z2|A2", m="3/4"), sounds="A4 3, r 4, A4 2")
    case("spacer", "6.1.2", STANDARD, tune("AyB y C"), sounds="A4 1, B4, C4")


def tuplets_ties_chords():
    for p, simple, compound in [
        (2, "3/4", "3/4"), (3, "1/3", "1/3"), (4, "3/8", "3/8"), (5, "1/5", "3/10"), (6, "1/6", "1/6"),
        (7, "1/7", "3/14"), (8, "3/16", "3/16"), (9, "1/9", "1/6"),
    ]:
        run = "CDEFGABcd"[:p]
        names = ["C4", "D4", "E4", "F4", "G4", "A4", "B4", "C5", "D5"][:p]
        for metre, each in (("4/4", simple), ("6/8", compound)):
            wanted = ", ".join(f"{n} {each}" for n in names) + ", C4 1/2"
            case(f"({p} in {metre}", "4.13", TABLE, tune(f"({p}{run}C", m=metre, l="1/8"), sounds=wanted)
    case("(3:2 and (3:: are (3", "4.13", STANDARD, tune("(3:2CDE (3::CDE C", l="1/8"), sounds="C4 1/3, D4, E4, C4, D4, E4, C4 1/2")
    case("(3:2:2", "4.13", EXAMPLE, tune("(3:2:2 G4c2 C", l="1/8"), sounds="G4 4/3, C5 2/3, C4 1/2")
    case("(3:2:4", "4.13", EXAMPLE, tune("(3:2:4 G2A2Bc C", l="1/8"), sounds="G4 2/3, A4 2/3, B4 1/3, C5 1/3, C4 1/2")
    case("(3::2", "4.13", EXAMPLE, tune("(3::2CDC", l="1/8"), sounds="C4 1/3, D4 1/3, C4 1/2")
    case("a space after the tuplet sign", "4.13", EXAMPLE, tune("(3 D2E2F2 C", l="1/8"), sounds="D4 2/3, E4, F4, C4 1/2")
    case("tuplet of unequal notes", "4.13", EXAMPLE, tune("(3 D3EF2 C", l="1/8"), sounds="D4 1, E4 1/3, F4 2/3, C4 1/2")
    case("rests and chords count in a tuplet", "4.13", STANDARD, tune("(3Cz[EG] C", l="1/8"), sounds="C4 1/3, r 1/3, E4+G4 1/3, C4 1/2")
    case("grace notes do not count in a tuplet", "4.13", STANDARD, tune("(3C{d}DE C", l="1/8"), sounds="C4 1/3, D4, E4, C4 1/2")
    case("slur round a tuplet", "4.11", STANDARD, tune("((3CDE) C", l="1/8"), sounds="C4 1/3, D4, E4, C4 1/2")
    case("broken rhythm in a tuplet", "4.13", PRACTICE, tune("(3C>DE C", l="1/8"), sounds="C4 1/2, D4 1/6, E4 1/3, C4 1/2")
    case("tie", "4.11", STANDARD, tune("C-C D2-|D4"), sounds="C4 2, D4 6")
    case("tie across the bar", "4.11", EXAMPLE, tune("abc-|cba"), sounds="A5 1, B5, C5 2, B5 1, A5")
    case("tie over three bars", "4.11", STANDARD, tune("C4-|C4-|C4"), sounds="C4 12")
    case("tie across a line end", "4.11", STANDARD, tune("C4-|\nC4|"), sounds="C4 8")
    case("slurs, nested and dotted", "4.11", STANDARD, tune("(CD(EF))|.(CD)EF"), sounds="C4 1, D4, E4, F4, C4, D4, E4, F4")
    case("slur into a tie", "4.11", EXAMPLE, tune("(c d (e) f g a)", l="1/8"), sounds="C5 1/2, D5, E5, F5, G5, A5")
    case("dotted tie", "4.11", STANDARD, tune("C.-C"), sounds="C4 2")
    case("tied chords", "4.11", STANDARD, tune("[CE]2-|[CE]2"), sounds="C4+E4 4")
    case("one tie inside a chord", "4.17", STANDARD, tune("[C-E][CF]"), notes=[["0", "2", 60], ["0", "1", 64], ["1", "1", 65]])
    case("tie to another pitch ties nothing", "4.11", PRACTICE, tune("C-D"), legal=False, sounds="C4 1, D4")
    case("grace notes are left out", "4.12", STANDARD, tune("{g}A{gab}B{/d}c{a2}d"), sounds="A4 1, B4, C5, D5")
    case("chord", "4.17", STANDARD, tune("[CEG]2[CEG]"), sounds="C4+E4+G4 2, C4+E4+G4 1")
    case("length inside and outside a chord", "4.17", EXAMPLE, tune("[C2E2G2]3", l="1/8"), sounds="C4+E4+G4 3")
    case("accidental in a chord", "4.17", STANDARD, tune("[^FA]F|F"), sounds="F#4+A4 1, F#4, F4")
    case("unison", "4.17", STANDARD, tune("[DD]"), sounds="D4+D4 1")
    case("decorations", "4.14", STANDARD, tune("!trill!A .B ~c Hd|LAMBOcPd|SATBuAvB|!>!A!fermata!B!<(!c!<)!d"),
         sounds="A4 1, B4, C5, D5, A4, B4, C5, D5, A4, B4, A4, B4, A4, B4, C5, D5")
    case("an unknown decoration is skipped", "4.14", STANDARD, tune("!wibble!A B"), sounds="A4 1, B4")
    case("redefined symbol", "4.16", STANDARD, tune("TA B", head="U:T = !trill!"), sounds="A4 1, B4")
    case("order of constructs", "4.20", EXAMPLE, tune('"Gm7"v.=G,2 ("^I"!f!CD)', k="A"), sounds="G3 2, C#4 1, D4", chords=[["0", "Gm7"]])
    case(
        "chord symbols", "4.18", STANDARD, tune('"Am"A2"D7"D2|"G"z2"Bb/D"B,2|"F#m7b5"A4'),
        sounds="A4 2, D4 2, r 2, B3 2, A4 4",
        chords=[["0", "Am"], ["2", "D7"], ["4", "G"], ["6", "Bb/D"], ["8", "F#m7b5"]],
    )
    case("the alternative chord in brackets is left", "4.18", STANDARD, tune('"G(Em)"G4'), chords=[["0", "G"]])
    case("typographic chord symbol", "4.18", STANDARD, tune('"B♭"B,2"F♯m"F2'), chords=[["0", "Bb"], ["2", "F#m"]])
    case("annotations are no chords", "4.19", STANDARD, tune('"^slow"A"_x"B"<("c">)"d|"@1,2 Am"A4'), sounds="A4 1, B4, C5, D5, A4 4", chords=[])
    case("a chord and an annotation on one note", "4.19", STANDARD, tune('"^x""D"D4'), chords=[["0", "D"]])


def repeats():
    def plays(name, body, played, section="4.8", source=STANDARD, **more):
        case(name, section, source, tune(body, l="1/1", **more), played=played)

    plays("repeat", "|:C|D:|", "C4 D4 C4 D4")
    plays("repeat without a start", "C|D:|E|F|]", "C4 D4 C4 D4 E4 F4")
    plays("repeat without a start, from the double bar", "A|C||E|F:|", "A4 C4 E4 F4 E4 F4")
    plays("repeat without a start, from the last repeat", "|:C:|E|F:|", "C4 C4 E4 F4 E4 F4")
    for sign in ("::", ":|:", ":||:"):
        plays(f"{sign} between two parts", f"|:C|D{sign}E|F:|", "C4 D4 C4 D4 E4 F4 E4 F4")
    plays("three times", "|::C|D::|E|]", "C4 D4 C4 D4 C4 D4 E4")
    for first, second in (("|1 ", ":|2 "), ("|[1 ", ":|[2 "), ("| [1 ", ":| [2 "), ("|1", ":|2")):
        plays(f"endings {first}...{second}", f"|:C{first}D{second}E|]", "C4 D4 C4 E4", "4.9")
    plays("endings without a start", "C|1 D:|2 E|]", "C4 D4 C4 E4", "4.9")
    plays("longer endings", "|:C|1 D|E:|2 F|G|]", "C4 D4 E4 C4 F4 G4", "4.9")
    plays("music after the second ending", "|:C|1 D:|2 E||F|G|]", "C4 D4 C4 E4 F4 G4", "4.9")
    plays("endings in both parts", "|:C|1 D:|2 E:|\n|:F|1 G:|2 A:|", "C4 D4 C4 E4 F4 G4 F4 A4", "4.9", PRACTICE)
    plays("endings in both parts, the second closed by a double bar", "|:C|1 D:|2 E||\n|:F|1 G:|2 A||", "C4 D4 C4 E4 F4 G4 F4 A4", "4.9")
    plays("ending for 1 and 2", "|:C|1,2 D:|3 E|]", "C4 D4 C4 D4 C4 E4", "4.10", PRACTICE)
    plays("ending for 1 to 3", "|:C|[1-3 D:|[4 E|]", "C4 D4 C4 D4 C4 D4 C4 E4", "4.10", PRACTICE)
    plays("endings 1,3 and 2", "|:C|[1,3 D:|[2 E:|F|]", "C4 D4 C4 E4 C4 D4 F4", "4.10", PRACTICE)
    case("pickup before a repeat", "4.8", STANDARD, tune("A|:C4|D4:|"), played="A4 C4 D4 C4 D4")
    case("pickup inside a repeat", "4.8", PRACTICE, tune("|:A|C4|D3:|"), played="A4 C4 D4 A4 C4 D4")
    plays("repeat over a line end", "|:C|\nD:|\nE|]", "C4 D4 C4 D4 E4")
    case("bar lines of any shape", "4.8", STANDARD, tune("C|[|D|]E||F[|G.|A[|]B|"), sounds="C4 1, D4, E4, F4, G4, A4, B4")
    plays("parts in order", "P:A\nC|D|\nP:B\nE|F|]", "C4 D4 E4 F4 C4 D4", "3.1.9", head="P:ABA")
    plays("parts with numbers", "P:A\nC|\nP:B\nD|]", "C4 C4 D4 D4 D4", "3.1.9", head="P:A2B3")
    plays("parts in brackets", "P:A\nC|\nP:B\nD|\nP:C\nE|]", "C4 D4 E4 D4 E4", "3.1.9", head="P:A(BC)2")
    plays("number inside brackets", "P:A\nC|\nP:B\nD|]", "C4 D4 D4 C4 D4 D4", "3.1.9", head="P:(AB2)2")
    plays("dots in the order of parts", "P:A\nC|\nP:B\nD|\nP:C\nE|]", "C4 D4 C4 D4 E4 E4", "3.1.9", head="P:(AB)2.(C)2")
    plays("brackets in brackets", "P:A\nC|\nP:B\nD|]", "C4 D4 C4 D4 C4 D4 C4 D4", "3.1.9", head="P:((AB)2)2")
    plays("repeats inside parts", "P:A\n|:C:|\nP:B\n|:D:|", "C4 C4 D4 D4 C4 C4", "3.1.9", head="P:ABA")
    plays("part labels without an order", "P:A\nC|\nP:B\nD|]", "C4 D4", "3.1.9")
    plays("inline part label", "[P:A]C|[P:B]D|]", "C4 D4 D4", "3.1.9", head="P:AB2")
    plays("endings chosen by the order of parts", "P:A\nC|[1 D:|[2 E:|[3,4 F|]", "C4 D4 C4 E4 C4 F4 C4 F4", "4.10", head="P:A4")


def compare():
    """Print where the two readers differ from what is expected."""
    from fractions import Fraction

    from music21 import converter, harmony

    import plain_abc

    for entry in CASES:
        wanted = entry["expect"].get("notes")
        if wanted is None:
            continue
        for who in ("plain", "music21"):
            try:
                if who == "plain":
                    got = [[str(a), str(f), m] for a, f, m in plain_abc.read(entry["abc"])[0]]
                else:
                    part = converter.parseData("%abc-2.1\n" + entry["abc"], format="abc").parts[0].stripTies()
                    heard = [n for n in part.recurse().notes if not n.duration.isGrace and not isinstance(n, harmony.Harmony)]
                    got = []
                    for n in heard:
                        for p in sorted(n.pitches):
                            got.append([str(Fraction(n.getOffsetInHierarchy(part))), str(Fraction(n.quarterLength)), int(p.ps)])
            except Exception as why:
                got = repr(why)[:80]
            if got != wanted:
                print(entry["name"], "|", who, "\n  wanted", wanted, "\n  got   ", got)


pitch_and_length()
tuplets_ties_chords()
repeats()
abc_more.keys_and_fields()
abc_more.words()
abc_more.files_and_text()
abc_more.broken()
names = [c["name"] for c in CASES]
assert len(set(names)) == len(names), [n for n in names if names.count(n) > 1]
folder = FIXTURES / "abc-standard"
folder.mkdir(exist_ok=True)
lines = ",\n".join(json.dumps(c, ensure_ascii=False) for c in CASES)
(folder / "cases.json").write_text(f"[\n{lines}\n]\n", encoding="utf-8")
print(len(CASES), "cases")
if "--compare" in sys.argv:
    compare()
