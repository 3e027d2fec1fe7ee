// How wide words print, without opening a font: Archivo by its advance widths (kerning left out: up to 3 % too wide), Plex
// Mono at 0.6 of its size. Signs that neither has come from DejaVu Sans and are taken as wide.
import type { TextFace } from '../scene/scene.ts';
import { ARCHIVO_WIDTHS, FIRST_CODE_POINT } from './archivo-widths.ts';

const MONO_WIDTH = 600; // thousandths, every glyph
const THIN_SPACE_WIDTH = 195; // U+2009 and U+202F, as inch fractions and prices hold them
const UNKNOWN_WIDTH = 700; // thousandths, DejaVu Sans on average for Greek, Cyrillic and arrows

/** Width of one line of text, points. */
export function textWidthPt(text: string, face: TextFace, sizePt: number): number {
  let thousandths = 0;
  for (const sign of text) thousandths += face === 'mono' ? MONO_WIDTH : signWidth(sign, face);
  return (thousandths * sizePt) / 1000;
}

function signWidth(sign: string, face: Exclude<TextFace, 'mono'>): number {
  if (sign === '\u2009' || sign === '\u202f') return THIN_SPACE_WIDTH;
  const cut = ARCHIVO_WIDTHS[face];
  const code = sign.codePointAt(0) ?? 0;
  return cut.latin[code - FIRST_CODE_POINT] || cut.signs[sign] || UNKNOWN_WIDTH;
}

/** Height of capitals and figures as a share of the type size: Archivo 0.686, Plex Mono 0.698. */
export const CAP_HEIGHT = 0.69;

/**
 * Breaks text into lines no wider than `widthPt`, at spaces and given line feeds; a word that is wider alone is cut.
 * Empty text is one empty line.
 */
export function wrapText(text: string, face: TextFace, sizePt: number, widthPt: number): readonly string[] {
  return text.split('\n').flatMap((paragraph) => wrapParagraph(paragraph, face, sizePt, widthPt));
}

function wrapParagraph(paragraph: string, face: TextFace, sizePt: number, widthPt: number): string[] {
  const lines: string[] = [];
  let current = '';
  for (const word of paragraph.split(' ')) {
    const longer = current === '' ? word : `${current} ${word}`;
    if (textWidthPt(longer, face, sizePt) <= widthPt) {
      current = longer;
      continue;
    }
    if (current !== '') lines.push(current);
    const pieces = cutWord(word, face, sizePt, widthPt);
    lines.push(...pieces.slice(0, -1));
    current = pieces.at(-1) ?? '';
  }
  return [...lines, current];
}

function cutWord(word: string, face: TextFace, sizePt: number, widthPt: number): string[] {
  const pieces: string[] = [];
  let piece = '';
  for (const sign of word) {
    if (piece !== '' && textWidthPt(piece + sign, face, sizePt) > widthPt) {
      pieces.push(piece);
      piece = '';
    }
    piece += sign;
  }
  return [...pieces, piece];
}

/** The text, or as much of it as fits with … at the end. */
export function shortenText(text: string, face: TextFace, sizePt: number, widthPt: number): string {
  if (textWidthPt(text, face, sizePt) <= widthPt) return text;
  const signs = [...text];
  while (signs.length > 0 && textWidthPt(`${signs.join('').trimEnd()}…`, face, sizePt) > widthPt) signs.pop();
  return signs.length === 0 ? '' : `${signs.join('').trimEnd()}…`;
}
