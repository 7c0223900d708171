#!/usr/bin/env python3
"""Makes the three files of Fourcourse Sans.

    pip install fonttools==4.68.0 skia-pathops fontpkg-inter==4.1.post1
    python3 make.py

Fourcourse Sans is Inter (Copyright 2020 The Inter Project Authors, SIL Open Font License 1.1, see OFL.txt), cut down to
the letters that tune titles need, with the music signs that Inter lacks drawn by us in its weights. Changed fonts carry
another name. Figures are tabular in the text weights and proportional in the bold one, which sets chord names.
"""

import math
from pathlib import Path

import fontpkg_inter
import pathops
from fontTools.pens.cu2quPen import Cu2QuPen
from fontTools.pens.ttGlyphPen import TTGlyphPen
from fontTools.subset import Options, Subsetter
from fontTools.ttLib import TTFont
from fontTools.varLib import instancer

HERE = Path(__file__).parent
SOURCE = Path(fontpkg_inter.__file__).parent / "files" / "Inter[opsz,wght].ttf"
# name, weight, optical size, tabular figures
CUTS = [("Regular", 400, 14, True), ("SemiBold", 600, 14, True), ("Bold", 740, 28, False)]
UNICODES = [
    *range(0x20, 0x7F), *range(0xA0, 0x180), 0x192, 0x218, 0x219, 0x21A, 0x21B, 0x394, 0x1E9E,
    *range(0x391, 0x3D0), *range(0x400, 0x460),  # titles in Greek and Cyrillic
    *range(0x2010, 0x2027), 0x2030, 0x2032, 0x2033, 0x2039, 0x203A, 0x2044, 0x20AC, 0x2122,
    *range(0x2190, 0x2194), 0x2212, 0x221E, 0x2248, 0x25B3, 0x25CF, 0x25CB,
]


def glyph(draw):
    """A TrueType glyph from a function that draws closed contours; overlaps are united."""
    path = pathops.Path()
    draw(path.getPen())
    path.simplify(clockwise=True)
    pen = TTGlyphPen(None)
    path.draw(Cu2QuPen(pen, max_err=1.0, reverse_direction=False))
    return pen.glyph()


def polygon(pen, points):
    pen.moveTo(points[0])
    for point in points[1:]:
        pen.lineTo(point)
    pen.closePath()


def box(pen, x0, y0, x1, y1):
    polygon(pen, [(x0, y0), (x1, y0), (x1, y1), (x0, y1)])


def ellipse(pen, cx, cy, rx, ry, degrees):
    k, turn = 0.5522847, math.radians(degrees)

    def at(x, y):
        x, y = x * rx, y * ry
        return cx + x * math.cos(turn) - y * math.sin(turn), cy + x * math.sin(turn) + y * math.cos(turn)

    pen.moveTo(at(1, 0))
    for a, b, c in [((1, k), (k, 1), (0, 1)), ((-k, 1), (-1, k), (-1, 0)), ((-1, -k), (-k, -1), (0, -1)), ((k, -1), (1, -k), (1, 0))]:
        pen.curveTo(at(*a), at(*b), at(*c))
    pen.closePath()


def signs(stem):
    """Music signs for a font of 2048 units whose upright strokes are `stem` wide: code point, name, advance, drawing."""
    thin, thick, side = 0.62 * stem, 0.9 * stem, 70

    def sharp(pen):
        wide = 560 + 1.5 * stem
        lean = 0.24
        for x, up in [(0.29, -55), (0.71, 55)]:
            box(pen, side + x * wide - thin / 2, -170 + up, side + x * wide + thin / 2, 1640 + up)
        for y in (440, 1030):
            low, high = y - lean * wide / 2, y + lean * wide / 2
            polygon(pen, [(side, low - thick / 2), (side + wide, high - thick / 2), (side + wide, high + thick / 2), (side, low + thick / 2)])

    def flat(pen):
        # A stem and a bowl that leaves it thin, swells to the right and comes back to a point at its foot.
        x, right = side + thin, side + 500 + 1.5 * stem
        middle = x + 0.5 * (right - x)
        bowl, counter = pathops.Path(), pathops.Path()
        outer = bowl.getPen()
        outer.moveTo((side, 860))
        outer.curveTo((side + 0.3 * (right - side), 1040), (middle, 1070), (middle + 40, 1070))
        outer.curveTo((right - 60, 1070), (right, 920), (right, 740))
        outer.curveTo((right, 380), (x + 120, 130), (side, -80))
        outer.closePath()
        inner = counter.getPen()
        edge = right - 1.12 * stem
        inner.moveTo((x, 190))
        inner.curveTo((x + 130, 300), (edge, 460), (edge, 720))
        inner.curveTo((edge, 850), (edge - 60, 905), (edge - 120, 905))
        inner.curveTo((x + 90, 905), (x, 790), (x, 700))
        inner.closePath()
        whole = pathops.Path()
        pathops.difference([bowl], [counter], whole.getPen())
        whole.draw(pen)
        stroke = pathops.Path()
        box(stroke.getPen(), side, 100, x, 1700)
        stroke.draw(pen)

    def natural(pen):
        wide = 400 + 1.3 * stem
        box(pen, side, 250, side + thin, 1700)
        box(pen, side + wide - thin, -200, side + wide, 1250)
        lean = 0.26
        for y in (420, 1040):
            low, high = y - lean * wide / 2, y + lean * wide / 2
            polygon(pen, [(side, low - thick / 2), (side + wide, high - thick / 2), (side + wide, high + thick / 2), (side, low + thick / 2)])

    def head(pen):
        ellipse(pen, side + 300, 190, 300, 215, 24)

    def half(pen):
        whole, hole, hollow = pathops.Path(), pathops.Path(), pathops.Path()
        head(whole.getPen())
        ellipse(hole.getPen(), side + 300, 190, 250, 100, 32)
        pathops.difference([whole], [hole], hollow.getPen())
        hollow.draw(pen)
        box(pen, side + 595 - 0.5 * stem, 250, side + 595, 1640)

    def quarter(pen):
        head(pen)
        box(pen, side + 595 - 0.5 * stem, 250, side + 595, 1640)

    def eighth(pen):
        quarter(pen)
        x = side + 595
        pen.moveTo((x - 0.5 * stem, 1640))
        pen.curveTo((x - 0.5 * stem, 1640), (x, 1640), (x, 1640))
        pen.curveTo((x + 20, 1330), (x + 400, 1250), (x + 250, 700))
        pen.curveTo((x + 260, 1000), (x + 100, 1100), (x - 0.5 * stem, 1150))
        pen.closePath()

    def dot(pen):
        ellipse(pen, side + 120, 190, 120, 120, 0)

    # The last four stand where the SMuFL standard puts them: text fonts have no agreed place for note values.
    return [
        (0x266F, "musicsharp", 560 + 1.5 * stem + 2 * side, sharp),
        (0x266D, "musicflat", 500 + 1.5 * stem + 2 * side, flat),
        (0x266E, "musicnatural", 400 + 1.3 * stem + 2 * side, natural),
        (0xE1D3, "noteHalfUp", 595 + 2 * side, half),
        (0xE1D5, "noteQuarterUp", 595 + 2 * side, quarter),
        (0xE1D7, "note8thUp", 925 + 2 * side, eighth),
        (0xE1E7, "augmentationDot", 240 + 2 * side, dot),
    ]


def make(name, weight, optical, tabular):
    font = TTFont(SOURCE)
    font = instancer.instantiateVariableFont(font, {"wght": weight, "opsz": optical}, overlap=instancer.OverlapMode.REMOVE)
    if tabular:
        figures = next(r for r in font["GSUB"].table.FeatureList.FeatureRecord if r.FeatureTag == "tnum")
        swaps = {}
        for index in figures.Feature.LookupListIndex:
            for table in font["GSUB"].table.LookupList.Lookup[index].SubTable:
                swaps.update(getattr(table, "ExtSubTable", table).mapping)
        for table in font["cmap"].tables:
            if table.isUnicode():
                for code in range(ord("0"), ord("9") + 1):
                    table.cmap[code] = swaps.get(table.cmap[code], table.cmap[code])
    options = Options()
    options.layout_features = ["kern", "mark", "mkmk", "ccmp", "locl"]
    options.hinting = False
    options.name_IDs = [0, 1, 2, 3, 4, 5, 6, 13, 14]
    options.notdef_outline = True
    cutter = Subsetter(options)
    cutter.populate(unicodes=UNICODES)
    cutter.subset(font)

    stem = font["glyf"]["l"].xMax - font["glyf"]["l"].xMin
    order = font.getGlyphOrder()
    for code, title, advance, draw in signs(stem):
        shape = glyph(draw)
        font["glyf"][title] = shape
        shape.recalcBounds(font["glyf"])
        font["hmtx"][title] = (round(advance), shape.xMin)
        if title not in order:
            order.append(title)
        for table in font["cmap"].tables:
            if table.isUnicode():
                table.cmap[code] = title
    font.setGlyphOrder(order)
    if "GDEF" in font and getattr(font["GDEF"].table, "GlyphClassDef", None):
        for _, title, _, _ in signs(stem):
            font["GDEF"].table.GlyphClassDef.classDefs[title] = 1

    family, weight_class = "Fourcourse Sans", {"Regular": 400, "SemiBold": 600, "Bold": 700}[name]
    names = font["name"]
    names.names = [n for n in names.names if n.nameID in (0, 13, 14)]
    style = name if name != "SemiBold" else "Semi Bold"
    for ident, text in [(1, family if name in ("Regular", "Bold") else f"{family} {style}"), (2, name if name != "SemiBold" else "Regular"),
                        (3, f"Fourcourse Sans {name} 1.0"), (4, f"{family} {style}"), (5, "Version 1.0"), (6, f"FourcourseSans-{name}"),
                        (16, family), (17, style)]:
        names.setName(text, ident, 3, 1, 0x409)
    font["OS/2"].usWeightClass = weight_class
    font["OS/2"].fsSelection = {"Regular": 0x40, "SemiBold": 0, "Bold": 0x20}[name] | 0x80
    font["head"].macStyle = 1 if name == "Bold" else 0
    if "STAT" in font:
        del font["STAT"]
    font["head"].modified = font["head"].created  # the same file each time
    font.recalcTimestamp = False
    out = HERE / f"FourcourseSans-{name}.ttf"
    font.save(out)
    print(f"{out.name}: {out.stat().st_size // 1024} kB, stem {stem}")


for cut in CUTS:
    make(*cut)
