"""Adapts a subset for sley: adapt.py FILE FAMILY STYLE.

It gives the file another name, and draws the fraction slash close to the raised
and lowered figures about it, so that any fraction can be set from characters.

Both fonts reserve their names, and a subset is a modified version, which may
not bear a reserved name (SIL Open Font License 1.1, condition 3). The copyright
and the licence stay in the file as they were.
"""

import sys

from fontTools.ttLib import TTFont

GAP = 110  # between figure and slash, in 1/2048 em


def rename(font, family, style):
    names = {
        1: family,
        2: style,
        3: f"{family} {style}: subset for sley",
        4: family if style == "Regular" else f"{family} {style}",
        6: f"{family.replace(' ', '')}-{style}",
    }
    for number, text in names.items():
        font["name"].setName(text, number, 3, 1, 0x409)
    font["name"].names = [n for n in font["name"].names if n.platformID == 3 and n.langID == 0x409]


def edge(points, y):
    """Where a straight edge, as two points, is at a height."""
    (x1, y1), (x2, y2) = points
    return x1 + (y - y1) * (x2 - x1) / (y2 - y1)


def close_up(font):
    """Takes space from both sides of the slash until 2 over 2 stands at GAP."""
    names, glyphs, widths = font.getBestCmap(), font["glyf"], font["hmtx"]
    slash, upper, lower = names[0x2044], names[0xB2], names[0x2082]
    shape, above, below = glyphs[slash], glyphs[upper], glyphs[lower]
    corners = sorted(shape.coordinates, key=lambda p: p[1])
    bottom, top = sorted(corners[:2]), sorted(corners[-2:])
    wide = widths[slash][0]
    left = edge((bottom[0], top[0]), above.yMin) + widths[upper][0] - above.xMax - GAP
    right = wide + below.xMin - edge((bottom[1], top[1]), below.yMax) - GAP
    shape.coordinates.translate((-round(left), 0))
    shape.recalcBounds(glyphs)
    widths[slash] = (max(wide - round(left) - round(right), 0), shape.xMin)


path, family, style = sys.argv[1:]
font = TTFont(path, recalcTimestamp=False)
rename(font, family, style)
close_up(font)
font.save(path)
