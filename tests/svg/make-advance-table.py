#!/usr/bin/python3
"""Measures the advance widths that src/svg/text-metrics/liberation-sans-advances.json holds.

Usage: /usr/bin/python3 tests/svg/make-advance-table.py > src/svg/text-metrics/liberation-sans-advances.json
Needs Debian's fonts-liberation and python3-fonttools. Widths are in font units, 2048 to the em.

Only the widths are kept: plain measurements, no outlines. The font itself, Liberation Sans 2, is under the
SIL Open Font License 1.1; it was drawn to the widths of Arial, so one table serves both.
"""

import json

from fontTools.ttLib import TTFont

FOLDER = "/usr/share/fonts/truetype/liberation/"
RANGES = [
    (0x0020, 0x007E),  # ASCII
    (0x00A0, 0x017F),  # Latin-1 and Latin Extended-A
    (0x0218, 0x021B),  # Romanian s and t with comma
    (0x0386, 0x03CE),  # Greek
    (0x0400, 0x045F),  # Cyrillic
    (0x1E9E, 0x1E9E),  # capital sharp s
    (0x2010, 0x2030),  # dashes, quotation marks, dagger, bullet, ellipsis, per mille
    (0x2032, 0x2044),  # primes, angle quotation marks, fraction slash
    (0x2070, 0x208E),  # superscripts and subscripts
    (0x20AC, 0x20AC),  # euro
    (0x2116, 0x2122),  # numero, trade mark
    (0x2190, 0x2195),  # arrows
    (0x2202, 0x2265),  # minus, square root, infinity, comparisons
    (0x2640, 0x2642),  # female and male
]


def advances(file: str) -> dict[str, int]:
    font = TTFont(FOLDER + file)
    assert font["head"].unitsPerEm == 2048
    glyphs = font.getBestCmap()
    return {
        chr(code): font["hmtx"][glyphs[code]][0]
        for first, last in RANGES
        for code in range(first, last + 1)
        if code in glyphs
    }


def wider(upright: str, slanted: str) -> dict[str, int]:
    """The slanted faces differ in some Greek and Cyrillic letters only; the wider of the two serves both."""
    first, second = advances(upright), advances(slanted)
    return {letter: max(width, second[letter]) for letter, width in first.items()}


table = {
    "about": "Advance widths measured from Liberation Sans (SIL Open Font License 1.1), 2048 units to the em",
    "regular": wider("LiberationSans-Regular.ttf", "LiberationSans-Italic.ttf"),
    "bold": wider("LiberationSans-Bold.ttf", "LiberationSans-BoldItalic.ttf"),
}
lines = [f"{json.dumps(name)}:{json.dumps(value, ensure_ascii=False, separators=(',', ':'))}" for name, value in table.items()]
print("{\n" + ",\n".join(lines) + "\n}")
