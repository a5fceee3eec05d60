"""Makes the typefaces of the pages from Alegreya Sans, and measures others that stand in until they have come.

    pip install fonttools brotli
    python3 src/build/fonts/web_fonts.py REGULAR.ttf ITALIC.ttf BOLD.ttf [OTHER.ttf ...]

The three come out of the artifact ph-fonts-alegreya-sans that pom.xml names. Each is written twice into the assets:
what Western European languages need, and, fetched only by a page that needs it, the rest. Hints for coarse screens
are left out. For every OTHER face the figures of its @font-face in groundbass.css are printed: made so much larger
or smaller, it takes the room of the regular face (of the bold one where its name says Bold).
"""

import pathlib
import sys

from fontTools import subset
from fontTools.ttLib import TTFont

ROOT = pathlib.Path(__file__).parents[3]
ASSETS = ROOT / "src/main/resources/groundbass/web/assets"
TEXTS = [ROOT / "src/main/resources/groundbass" / name for name in ("messages.properties", "messages_de.properties")]
WESTERN = (
    "U+0020-007E,U+00A0-00FF,U+0131,U+0152-0153,U+02C6,U+02DA,U+02DC,U+2000-206F,U+20AC,U+2122,U+2190-2193,U+2212"
)
FEATURES = ["kern", "mark", "mkmk", "ccmp", "locl", "liga", "lnum", "pnum", "tnum"]


def write(font_file, characters, name):
    font = TTFont(font_file, recalcTimestamp=False)
    options = subset.Options(hinting=False, layout_features=FEATURES, flavor="woff2", name_IDs=["*"])
    subsetter = subset.Subsetter(options)
    subsetter.populate(unicodes=characters)
    subsetter.subset(font)
    subset.save_font(font, str(ASSETS / name), options)
    print(name, (ASSETS / name).stat().st_size, "bytes,", len(font.getBestCmap()), "characters")


def mean_width(font, text):
    """Of a character of the text, as a share of the size of the face."""
    widths, glyphs = font["hmtx"], font.getBestCmap()
    known = [widths[glyphs[ord(character)]][0] for character in text if ord(character) in glyphs]
    return sum(known) / len(known) / font["head"].unitsPerEm


def main(regular, italic, bold, *others):
    western = subset.parse_unicodes(WESTERN.replace("U+", ""))
    for name, font_file in (("regular", regular), ("italic", italic), ("bold", bold)):
        every = set(TTFont(font_file).getBestCmap())
        write(font_file, every & set(western), f"text-{name}.woff2")
        write(font_file, every - set(western), f"text-{name}-more.woff2")
    text = "".join(line.partition("=")[2] for file in TEXTS for line in file.read_text().splitlines())
    for other in others:
        own = TTFont(bold if "Bold" in other else regular)
        size = mean_width(own, text) / mean_width(TTFont(other), text)
        heights = own["hhea"]
        print(pathlib.Path(other).name, f"size-adjust: {size:.1%}", end="")
        for part, height in (("ascent", heights.ascent), ("descent", -heights.descent), ("line-gap", heights.lineGap)):
            print(f"; {part}-override: {height / own['head'].unitsPerEm / size:.1%}", end="")
        print()


if __name__ == "__main__":
    main(*sys.argv[1:])
