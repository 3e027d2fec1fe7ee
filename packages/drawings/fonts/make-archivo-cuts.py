"""Cut the still fonts that the PDFs embed out of the variable Archivo.

pdfkit embeds a WOFF2 variable font only at its default weight, so the three cuts that paper needs are made
once and kept here. Latin and Latin Extended come as two files and leave as one. The advance widths of the same
cuts go to ../src/text/archivo-widths.ts, so that a page is laid out without opening a font.

    python3 -m venv .venv && .venv/bin/pip install fonttools==4.66.1 brotli==1.2.0
    .venv/bin/python make-archivo-cuts.py

Source: npm package @fontsource-variable/archivo 5.3.0 (SIL Open Font License 1.1, see OFL.txt beside this file).
"""

from pathlib import Path
from tempfile import TemporaryDirectory

from fontTools.merge import Merger, Options
from fontTools.ttLib import TTFont
from fontTools.varLib.instancer import instantiateVariableFont

HERE = Path(__file__).resolve().parent
SOURCES = HERE.parents[2] / "node_modules/@fontsource-variable/archivo/files"
RANGES = ("latin", "latin-ext")
# name of the cut: weight and width axis
CUTS = {"regular": (400, 100), "semibold": (620, 98), "condensed": (620, 80)}
UNUSED_TABLES = ("DSIG", "GDEF", "STAT")
WIDTHS_FILE = HERE.parent / "src/text/archivo-widths.ts"
FIRST, LAST = 0x20, 0x17F
PUNCTUATION = "–—‘’“”„•…′″⁄€−"


def instance(source: Path, weight: int, width: int, target: Path) -> None:
    font = instantiateVariableFont(TTFont(source), {"wght": weight, "wdth": width})
    for tag in UNUSED_TABLES:
        if tag in font:
            del font[tag]
    font.flavor = None
    font.save(target)


def rename(font: TTFont, cut: str) -> None:
    style = cut.capitalize()
    for name_id, text in {1: "Archivo", 2: style, 4: f"Archivo {style}", 6: f"Archivo-{style}"}.items():
        font["name"].setName(text, name_id, 3, 1, 0x409)
    font["name"].names = [record for record in font["name"].names if record.nameID <= 14]


def widths(font: TTFont) -> tuple[list[int], dict[str, int]]:
    names, metrics = font.getBestCmap(), font["hmtx"]
    width = lambda code: metrics[names[code]][0] if code in names else 0
    return [width(code) for code in range(FIRST, LAST + 1)], {c: width(ord(c)) for c in PUNCTUATION if ord(c) in names}


def write_widths(tables: dict[str, tuple[list[int], dict[str, int]]]) -> None:
    lines = [
        "// Advance widths of the Archivo cuts in ../../fonts, thousandths of the type size; 0 = the cut lacks the sign.",
        "// Made by fonts/make-archivo-cuts.py from @fontsource-variable/archivo 5.3.0: change that, not this.",
        "",
        f"/** Code point of the first entry in each `latin` table; the tables run on to U+{LAST:04X}. */",
        f"export const FIRST_CODE_POINT = {FIRST};",
        "",
        "export type CutWidths = { readonly latin: readonly number[]; readonly signs: Readonly<Record<string, number>> };",
        "",
        "export const ARCHIVO_WIDTHS: Readonly<Record<'regular' | 'semibold' | 'condensed', CutWidths>> = {",
    ]
    for cut, (latin, signs) in tables.items():
        pairs = ", ".join(f"'{c}': {w}" for c, w in signs.items())
        lines += [f"  {cut}: {{", f"    latin: {latin},", f"    signs: {{ {pairs} }},", "  },"]
    WIDTHS_FILE.write_text("\n".join([*lines, "};", ""]), encoding="utf-8")


def main() -> None:
    tables = {}
    for cut, (weight, width) in CUTS.items():
        with TemporaryDirectory() as folder:
            parts = []
            for part in RANGES:
                target = Path(folder) / f"{part}.ttf"
                instance(SOURCES / f"archivo-{part}-wdth-normal.woff2", weight, width, target)
                parts.append(str(target))
            font = Merger(Options(drop_tables=["GSUB"])).merge(parts)
        rename(font, cut)
        tables[cut] = widths(font)
        font.recalcTimestamp = False
        font["head"].created = font["head"].modified = 0
        font.save(HERE / f"archivo-{cut}.ttf")
    write_widths(tables)


if __name__ == "__main__":
    main()
