// The fonts that a PDF embeds, and which of them has a sign: pdfkit drops signs that a font lacks without a word, so
// each line of text is split into runs before it is drawn.
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { fileURLToPath } from 'node:url';
import type { TextFace } from '../scene/scene.ts';
import { woffToSfnt } from './woff-to-sfnt.ts';

const ownFont = (file: string): string => fileURLToPath(new URL(`../../fonts/${file}`, import.meta.url));
const packaged = createRequire(import.meta.url);

type FontName = TextFace | 'wide' | 'wide-mono' | 'wide-bold';

const FILES: Readonly<Record<Exclude<FontName, 'mono'>, () => string>> = {
  regular: () => ownFont('archivo-regular.ttf'),
  semibold: () => ownFont('archivo-semibold.ttf'),
  condensed: () => ownFont('archivo-condensed.ttf'),
  wide: () => packaged.resolve('dejavu-fonts-ttf/ttf/DejaVuSans.ttf'),
  'wide-bold': () => packaged.resolve('dejavu-fonts-ttf/ttf/DejaVuSansCondensed-Bold.ttf'),
  'wide-mono': () => packaged.resolve('dejavu-fonts-ttf/ttf/DejaVuSansMono.ttf'),
};

// This build and not the @fontsource one: pdfkit 0.20 stumbles over the space in that.
const MONO_FILE = '@ibm/plex-mono/fonts/complete/woff/IBMPlexMono-Regular.woff';
let unpackedMono: Uint8Array | null = null; // the same bytes for every document of the process

function monoFont(): Uint8Array {
  unpackedMono ??= woffToSfnt(readFileSync(packaged.resolve(MONO_FILE)));
  return unpackedMono;
}

const FALLBACKS: Readonly<Record<TextFace, FontName>> = {
  regular: 'wide',
  semibold: 'wide-bold',
  condensed: 'wide-bold',
  mono: 'wide-mono',
};

export function registerFonts(document: PDFKit.PDFDocument): void {
  for (const [name, file] of Object.entries(FILES)) document.registerFont(name, file());
  document.registerFont('mono', monoFont());
}

export type TextRun = { readonly font: FontName; readonly text: string };

/** Neighbouring signs that one font can draw; signs that neither font has become `□`, so that a gap is seen. */
export function textRuns(document: PDFKit.PDFDocument, text: string, face: TextFace): readonly TextRun[] {
  const runs: { font: FontName; text: string }[] = [];
  for (const sign of printable(text)) {
    const own = hasSign(document, face, sign);
    const fallback = FALLBACKS[face];
    const font = own ? face : fallback;
    const drawn = own || hasSign(document, fallback, sign) ? sign : '□';
    const last = runs.at(-1);
    if (last?.font === font) last.text += drawn;
    else runs.push({ font, text: drawn });
  }
  return runs;
}

/** Line feeds, tabs and other control signs are drawn as spaces; half surrogates as U+FFFD. */
const printable = (text: string): string => text.toWellFormed().replace(/\p{Cc}/gu, ' ');

// pdfkit keeps the open font in `_font` and has no public way to ask it for a glyph.
type WithOpenFont = PDFKit.PDFDocument & {
  readonly _font: { readonly font: { hasGlyphForCodePoint(code: number): boolean } };
};

function hasSign(document: PDFKit.PDFDocument, font: FontName, sign: string): boolean {
  const open = document.font(font) as WithOpenFont;
  return open._font.font.hasGlyphForCodePoint(sign.codePointAt(0) ?? 0);
}
