"""More cases for abc_cases.py: keys, fields, words, files, text, and input that is simply wrong."""

from abc_case import EXAMPLE, MEMORY, PRACTICE, STANDARD, TABLE, case, tune

SCALE = "CDEF|GABc"


def key(name, value, tonic, mode, sounds, source=STANDARD, section="3.1.14", **more):
    wanted = {"tonic": tonic, "mode": mode} if tonic else None
    extra = {"key": wanted} if wanted else {}
    case(name, section, source, tune(SCALE, k=value), sounds=", ".join(f"{n} 1" for n in sounds.split()), **extra, **more)


def keys_and_fields():
    d_major = "C#4 D4 E4 F#4 G4 A4 B4 C#5"
    one_sharp = "C4 D4 E4 F#4 G4 A4 B4 C5"
    natural = "C4 D4 E4 F4 G4 A4 B4 C5"
    for value, tonic, mode, sounds in [
        ("D", "D", "major", d_major),
        ("Dmaj", "D", "major", d_major),
        ("D major", "D", "major", d_major),
        ("D ionian", "D", "major", d_major),
        ("Bm", "B", "minor", d_major),
        ("B minor", "B", "minor", d_major),
        ("BMIN", "B", "minor", d_major),
        ("B aeolian", "B", "minor", d_major),
        ("A mix", "A", "mixolydian", d_major),
        ("AMixolydian", "A", "mixolydian", d_major),
        ("E dor", "E", "dorian", d_major),
        ("EDorian", "E", "dorian", d_major),
        ("F#phr", "F#", "phrygian", d_major),
        ("G Lyd", "G", "lydian", d_major),
        ("C#loc", "C#", "locrian", d_major),
        ("Bb", "Bb", "major", "C4 D4 Eb4 F4 G4 A4 Bb4 C5"),
        ("Gm", "G", "minor", "C4 D4 Eb4 F4 G4 A4 Bb4 C5"),
        ("Cb", "Cb", "major", "Cb4 Db4 Eb4 Fb4 Gb4 Ab4 Bb4 Cb5"),
        ("C#", "C#", "major", "C#4 D#4 E#4 F#4 G#4 A#4 B#4 C#5"),
    ]:
        key(f"K:{value}", value, tonic, mode, sounds, TABLE)
    key("K:none", "none", None, None, natural)
    key("K: left empty", "", None, None, natural)
    key("K:D Phr ^f", "D Phr ^f", "D", "phrygian", "C4 D4 Eb4 F#4 G4 A4 Bb4 C5", EXAMPLE)
    key("K:D maj =c", "D maj =c", "D", "major", "C4 D4 E4 F#4 G4 A4 B4 C5", EXAMPLE)
    key("K:D =c", "D =c", "D", "major", "C4 D4 E4 F#4 G4 A4 B4 C5", EXAMPLE)
    key("K:D exp _b _e ^f", "D exp _b _e ^f", None, None, "C4 D4 Eb4 F#4 G4 A4 Bb4 C5", EXAMPLE)
    key("K:HP", "HP", None, None, natural)
    key("K:Hp", "Hp", None, None, d_major)
    key("K:G clef=bass", "G clef=bass", "G", "major", one_sharp, section="4.6")
    key("K:G treble", "G treble", "G", "major", one_sharp, section="4.6")
    key("K:Em clef=alto middle=C", "Em clef=alto middle=C", "E", "minor", one_sharp, section="4.6", volatile=True)
    key("K:C transpose=-2 sounds a tone lower", "C transpose=-2", None, None, "Bb3 C4 D4 Eb4 F4 G4 A4 Bb4", section="4.6", volatile=True)
    key("K:C octave=-1", "C octave=-1", None, None, "C3 D3 E3 F3 G3 A3 B3 C4", section="4.6", volatile=True)
    key("K:C treble-8 sounds an octave lower", "C treble-8", None, None, "C3 D3 E3 F3 G3 A3 B3 C4", section="4.6", volatile=True)
    case("change of key in the body", "3.2", STANDARD, tune("F4|\nK:D\nF4|[K:Bb]B4|"), sounds="F4 4, F#4, Bb4", key={"tonic": "C", "mode": "major"})
    case("change of metre in the body", "3.2", STANDARD, tune("C4|[M:3/4]D3|\nM:4/4\nE4|"), sounds="C4 4, D4 3, E4 4", metre="4/4")
    case("metre C|", "3.1.6", STANDARD, tune("C4", m="C|"), metre="2/2")
    case("metre C", "3.1.6", STANDARD, tune("C4", m="C"), metre="4/4")
    case("metre with a sum", "3.1.6", STANDARD, tune("C5", m="(2+3)/8", l="1/8"), metre="5/8", sounds="C4 5/2")
    case("several titles", "3.1.2", STANDARD, tune("C", head="T:Another Name"), titles=["Case", "Another Name"])
    case("composer, origin and rhythm", "3.1", STANDARD, tune("C", head="C:Jane Doe\nO:Nowhere\nR:slip jig"), composer="Jane Doe", rhythm="slip jig")
    for value, beat, rate in [
        ("1/4=120", "1", 120), ("3/8=50", "3/2", 50), ("1/2=108", "2", 108), ('"Allegro" 1/4=120', "1", 120),
        ('3/8=50 "Slowly"', "3/2", 50), ("1/4 3/8 1/4 3/8=40", "5", 40),
    ]:
        case(f"Q:{value}", "3.1.8", EXAMPLE, tune("C", head=f"Q:{value}"), tempo={"beat": beat, "per_minute": rate})
    case("Q: with a bare number", "10.1", MEMORY, tune("C", head="Q:120", l="1/8"), tempo={"beat": "1/2", "per_minute": 120})
    case("Q: with words alone", "3.1.8", EXAMPLE, tune("C", head='Q:"Andante"'), sounds="C4 1")


def words():
    def sung(name, body, verses, source=STANDARD, section="5.1", **more):
        given = [[[at, text] for at, text in verse] for verse in verses]
        case(name, section, source, tune(body), lyrics=given, **more)

    sung("syll-a-ble", "CDE\nw:syll-a-ble", [[("0", "syll"), ("1", "a"), ("2", "ble")]], EXAMPLE)
    sung("syll-a--ble", "CDEF\nw:syll-a--ble", [[("0", "syll"), ("1", "a"), ("3", "ble")]], EXAMPLE)
    sung("syll-a -ble", "CDEF\nw:syll-a -ble", [[("0", "syll"), ("1", "a"), ("3", "ble")]], EXAMPLE)
    sung("time__", "CDEF\nw:time__ on", [[("0", "time"), ("3", "on")]], EXAMPLE)
    sung("of~the~day", "CD\nw:of~the~day now", [[("0", "of the day"), ("1", "now")]], EXAMPLE)
    sung("a hyphen that is printed", "CD\nw:jack\\-a dandy", [[("0", "jack-a"), ("1", "dandy")]])
    sung("a note is skipped", "CDEF\nw:one * three four", [[("0", "one"), ("2", "three"), ("3", "four")]])
    sung("the bar sign", "CDE|FG|A\nw:one|four five|six", [[("0", "one"), ("3", "four"), ("4", "five"), ("5", "six")]])
    sung("the bar sign where the bar is full", "CD|EF|\nw:one two|three four|", [[("0", "one"), ("1", "two"), ("2", "three"), ("3", "four")]])
    sung("an empty w: leaves a line without words", "CDEF|\nw:doh re mi fa\nGGGG|\nw:\nFEFC|\nw:fa mi re doh", [[
        ("0", "doh"), ("1", "re"), ("2", "mi"), ("3", "fa"), ("8", "fa"), ("9", "mi"), ("10", "re"), ("11", "doh"),
    ]], EXAMPLE)
    sung("too many syllables", "CD|\nw:one two three", [[("0", "one"), ("1", "two")]])
    sung("no words on grace notes and rests", "{g}CzD{a}E\nw:one two three", [[("0", "one"), ("2", "two"), ("3", "three")]])
    sung("tied notes take words one by one", "C-CD\nw:one _ two", [[("0", "one"), ("2", "two")]])
    sung("a chord is one note", "[CE]D\nw:one two", [[("0", "one"), ("1", "two")]])
    sung("two verses", "CD|\nw:one two\nw:un deux", [[("0", "one"), ("1", "two")], [("0", "un"), ("1", "deux")]], section="5.2")
    sung("verses over two lines of music", "CD|\nw:one two\nw:un deux\nEF|\nw:three four\nw:trois quatre", [
        [("0", "one"), ("1", "two"), ("2", "three"), ("3", "four")], [("0", "un"), ("1", "deux"), ("2", "trois"), ("3", "quatre")],
    ], section="5.2")
    sung("a w: line goes on in +:", "CDEF|\nw:one two\n+:three four", [[("0", "one"), ("1", "two"), ("2", "three"), ("3", "four")]], section="3.3")
    sung("words with accents", "CD\nw:m\\'e caf\u00e9", [[("0", "m\u00e9"), ("1", "caf\u00e9")]], section="8.2")
    case("words after the tune", "5", STANDARD, tune("CD|\nW:First line\nW:Second line"), words_after=["First line", "Second line"])


def files_and_text():
    case("comment at the end of a line", "2.2.5", STANDARD, tune("C D % E F\nG"), sounds="C4 1, D4, G4")
    case("comment line in the body", "2.2.5", STANDARD, tune("C D\n% E F\nG"), sounds="C4 1, D4, G4")
    case("comment in a field", "2.2.5", STANDARD, tune("FC", k="D % two sharps"), sounds="F#4 1, C#4", key={"tonic": "D", "mode": "major"})
    case("remark", "2.2.5", STANDARD, tune("C [r:A B] D\nr:E F\nE"), sounds="C4 1, D4, E4")
    case("line continuation", "2.2.6", STANDARD, tune("C D \\\nE F|"), sounds="C4 1, D4, E4, F4")
    case("line continuation with a comment", "2.2.6", STANDARD, tune("C D \\ % go on\nE F|"), sounds="C4 1, D4, E4, F4")
    case("line continuation over a field", "2.2.6", STANDARD, tune("C D|\\\nM:3/4\nE F G|"), sounds="C4 1, D4, E4, F4, G4")
    case("words under a continued line", "2.2.6", MEMORY, tune("C D\\\nE F|\nw:one two three four"), lyrics=[[["0", "one"], ["1", "two"], ["2", "three"], ["3", "four"]]])
    case("text block in a tune", "2.2.3", STANDARD, tune("C D\n%%begintext\nA B C\n%%endtext\nE"), sounds="C4 1, D4, E4")
    case("text line in a tune", "2.2.3", STANDARD, tune("C D\n%%text A B C\n%%center F\nE"), sounds="C4 1, D4, E4")
    case("an unknown directive", "11", STANDARD, tune("%%wibble 3\nC D", head="%%pagewidth 20cm"), sounds="C4 1, D4")
    case("an unknown instruction", "3.1.17", STANDARD, tune("[I:wibble 3]C D", head="I:abc-charset utf-8"), sounds="C4 1, D4")
    case("an empty line ends the tune", "2.2.4", STANDARD, tune("C D\n\nE F"), sounds="C4 1, D4")
    case("two tunes", "2.2", STANDARD, tune("C") + "\nX:2\nT:Second\nM:3/4\nL:1/4\nK:G\nF\n", tunes=["Case", "Second"])
    case("free text between tunes", "2.2.3", STANDARD, "%abc-2.1\n\n" + tune("C") + "\nSome words about the next one.\n\nX:2\nT:Second\nK:G\nF\n", tunes=["Case", "Second"])
    case("file header", "2.2.2", STANDARD, "%abc-2.1\nM:3/4\nL:1/4\n\nX:1\nT:Case\nK:C\nC3\n", metre="3/4", sounds="C4 3")
    case("field order with K: last", "2.2.1", STANDARD, "X:1\nT:Case\nL:1/4\nM:3/4\nK:G\nF\n", metre="3/4", sounds="F#4 1")
    case("the second voice is left out", "7", STANDARD, tune("V:1\nC D E F|\nV:2\nC, D, E, F,|\nV:1\nG4|\nV:2\nG,4|"), sounds="C4 1, D4, E4, F4, G4 4")
    case("inline voices", "7", STANDARD, tune("[V:T]C D E F|\n[V:B]C, D, E, F,|\n[V:T]G4|\n[V:B]G,4|", head="V:T\nV:B"), sounds="C4 1, D4, E4, F4, G4 4")
    case("overlay is left out", "7.4", STANDARD, tune("C D E F & A, A, A, A,|G4|"), volatile=True, sounds="C4 1, D4, E4, F4, G4 4")
    for written, text in [
        ("Caf\\'e", "Caf\u00e9"), ("Caf&eacute;", "Caf\u00e9"), ("Caf\\u00e9", "Caf\u00e9"), ("Caf\u00e9", "Caf\u00e9"),
        ("M\\\"uhle", "M\u00fchle"), ("M&uuml;hle", "M\u00fchle"), ("Espa\\~na", "Espa\u00f1a"), ("Gar\\ccon", "Gar\u00e7on"),
        ("\\AAse", "\u00c5se"), ("S\\/or", "S\u00f8r"), ("Fl\\aem", "Fl\u00e6m"), ("Stra\\sse", "Stra\u00dfe"),
        ("Na\\\"ive \\`a l'\\^ile", "Na\u00efve \u00e0 l'\u00eele"), ("\\vSvec", "\u0160vec"), ("Erd\\Ho", "Erd\u0151"),
        ("Jack &amp; Jill", "Jack & Jill"), ("50\\% of it", "50% of it"), ("One \\\\ Two", "One \\ Two"), ("Fish \\& Chips", "Fish & Chips"),
        ("\\u266d and \\u266f", "\u266d and \u266f"), ("Quote &quot;this&quot;", 'Quote "this"'), ("&copy; A", "\u00a9 A"),
    ]:
        case(f"text {written}", "8.2", MEMORY, f"X:1\nT:{written}\nK:C\nC\n", title=text)
    case("Windows line ends", "2.2", PRACTICE, tune("C D|\\\nE F|").replace("\n", "\r\n"), title="Case", sounds="C4 1, D4, E4, F4")
    case("old Mac line ends", "2.2", PRACTICE, tune("C D|\nE F|").replace("\n", "\r"), title="Case", sounds="C4 1, D4, E4, F4")
    case("byte order mark", "2.2", PRACTICE, "\ufeff" + tune("C D|"), title="Case", sounds="C4 1, D4")
    case("spaces after the field letter", "3", PRACTICE, "X: 1\nT: Case \nM: 3/4\nL: 1/4\nK: Em\nF\n", title="Case", metre="3/4", sounds="F#4 1", key={"tonic": "E", "mode": "minor"})
    case("no empty line at the end", "2.2.1", PRACTICE, "X:1\nT:Case\nK:C\nC", title="Case", sounds="C4 1/2")
    case("old decoration signs", "10.2", MEMORY, tune("+trill+A B", head="I:decoration +"), sounds="A4 1, B4", volatile=True)
    case("old line break !", "10.2", PRACTICE, tune("C D!\nE F|"), legal=False, sounds="C4 1, D4, E4, F4")


def broken():
    def wrong(name, abc, **expect):
        case(name, "8", PRACTICE, abc, legal=False, problems_at_least=1, **expect)

    wrong("no K:", "X:1\nT:Case\nM:3/4\n", title="Case")
    wrong("a chord that never closes", tune("C D|[CEG"), title="Case")
    wrong("a quotation that never closes", tune('C D|"Am E F'), title="Case")
    wrong("grace notes that never close", tune("C D|{ab"), title="Case")
    wrong("a key that is none", tune("C D", k="H#"), sounds="C4 1, D4")
    wrong("a metre that is none", tune("C D", m="4/0"), sounds="C4 1, D4")
    wrong("a unit that is none", tune("C D", l="1/0"), title="Case")
    wrong("a length of nothing", tune("C D/0 E"), title="Case")
    wrong("a length beyond sense", tune("C D99999999999999999999 E"), title="Case")
    wrong("bars of rest beyond sense", tune("C|Z99999999999|D"), title="Case")
    case("reserved characters", "8.1", STANDARD, tune("C # D ; E"), legal=False, sounds="C4 1, D4, E4")
    wrong("broken rhythm with nothing before it", tune(">C D"), title="Case")
    wrong("a part that is not there", tune("P:A\nC|", head="P:AB"), played="C4")
    wrong("brackets of parts that never close", tune("P:A\nC|", head="P:(A(A"), title="Case")
    wrong("parts beyond sense", tune("P:A\nC|", head="P:((((A9999)9999)9999)9999)9999"), title="Case")
