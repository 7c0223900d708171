#!/usr/bin/env python3
"""Makes FourcourseMusic.otf, the signs of the page on the Porch.

    pip install fonttools==4.68.0
    npm pack @vexflow-fonts/bravura@1.0.2 && tar xzf vexflow-fonts-bravura-1.0.2.tgz
    python3 make_music.py package/bravura.otf

It is Bravura (Copyright Steinberg Media Technologies GmbH, SIL Open Font License 1.1, see OFL-music.txt) cut down to
the signs below, at the code points of the SMuFL standard. Changed fonts carry another name. An em is four staff spaces,
as SMuFL wants it; the line of the text is two ems high with the baseline 1.2 ems below its top, so that no sign leaves it.
"""

import sys
from pathlib import Path

from fontTools.subset import Options, Subsetter
from fontTools.ttLib import TTFont

UNICODES = [
    0xE043, 0xE044,  # dots of a repeat
    0xE047, 0xE048,  # segno, coda
    0xE050, 0xE052, 0xE062,  # clefs
    *range(0xE080, 0xE08C),  # figures of a metre, C and C with a stroke
    0xE0A0, 0xE0A2, 0xE0A3, 0xE0A4,  # heads of notes
    0xE1E7,  # dot
    *range(0xE240, 0xE248),  # flags
    0xE260, 0xE261, 0xE262, 0xE263, 0xE264,  # flat, natural, sharp, double sharp, double flat
    0xE4C0,  # fermata
    *range(0xE4E3, 0xE4EA),  # rests
    0xE610, 0xE612,  # down bow, up bow
    0xE883,  # the 3 of a triplet
    *range(0xE880, 0xE88A),  # figures of a tuplet
]


def main(source):
    font = TTFont(source)
    options = Options()
    options.layout_features = []
    options.hinting = False
    options.desubroutinize = True
    options.name_IDs = [0, 13, 14]
    options.notdef_outline = True
    cutter = Subsetter(options)
    cutter.populate(unicodes=UNICODES)
    cutter.subset(font)
    em = font["head"].unitsPerEm
    above, below = round(1.2 * em), round(0.8 * em)
    font["hhea"].ascent, font["hhea"].descent, font["hhea"].lineGap = above, -below, 0
    os2 = font["OS/2"]
    os2.sTypoAscender, os2.sTypoDescender, os2.sTypoLineGap = above, -below, 0
    os2.usWinAscent, os2.usWinDescent = above, below
    names = font["name"]
    names.names = [name for name in names.names if name.nameID in (0, 13, 14)]
    for ident, text in [(1, "Fourcourse Music"), (2, "Regular"), (3, "Fourcourse Music 1.0"), (4, "Fourcourse Music"),
                        (5, "Version 1.0"), (6, "FourcourseMusic")]:
        names.setName(text, ident, 3, 1, 0x409)
    top = font["CFF "].cff
    top.fontNames = ["FourcourseMusic"]
    top[0].rawDict.update({"FullName": "Fourcourse Music", "FamilyName": "Fourcourse Music"})
    for key in ("FullName", "FamilyName"):
        setattr(top[0], key, "Fourcourse Music")
    font["head"].modified = font["head"].created  # the same file each time
    font.recalcTimestamp = False
    out = Path(__file__).parent / "FourcourseMusic.otf"
    font.save(out)
    print(f"{out.name}: {out.stat().st_size // 1024} kB, {em} units to the em")


main(sys.argv[1])
