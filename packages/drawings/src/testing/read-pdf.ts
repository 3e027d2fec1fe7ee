// Reads back what a PDF of ours holds, from its bytes alone: objects, unpacked streams and the text on its pages.
import { inflateSync } from 'node:zlib';

export type ReadPdf = {
  readonly version: string;
  /** Dictionaries and the like, without streams, by object number. */
  readonly objects: ReadonlyMap<number, string>;
  readonly pageCount: number;
  /** Drawing operators of each page, unpacked. */
  readonly pageContents: readonly string[];
  /** Text of each page in the order it was written, one line a text operator. */
  readonly pageTexts: readonly string[];
};

type PdfObject = { readonly head: string; readonly stream: Uint8Array | null };

export function readPdf(bytes: Uint8Array): ReadPdf {
  const source = Buffer.from(bytes).toString('latin1');
  const found = new Map<number, PdfObject>();
  for (const match of source.matchAll(/(?<=^|\n)(\d+) 0 obj\n([\s\S]*?)\nendobj/g)) {
    const [, number = '', body = ''] = match;
    found.set(Number(number), readObject(body));
  }
  const objects = new Map([...found].map(([number, { head }]) => [number, head]));
  const pages = pageObjects(objects);
  const fonts = fontMaps(found);
  const pageContents = pages.map((page) => {
    const content = found.get(Number(/\/Contents (\d+) 0 R/.exec(page)?.[1]))?.stream ?? new Uint8Array();
    return Buffer.from(content).toString('latin1');
  });
  return {
    version: /^%PDF-(\d\.\d)/.exec(source)?.[1] ?? '',
    objects,
    pageCount: pages.length,
    pageContents,
    pageTexts: pageContents.map((content) => pageText(content, fonts)),
  };
}

function readObject(body: string): PdfObject {
  const start = body.indexOf('\nstream\n');
  if (start === -1) return { head: body, stream: null };
  const head = body.slice(0, start);
  const packed = Buffer.from(body.slice(start + 8, body.lastIndexOf('\nendstream')), 'latin1');
  return { head, stream: head.includes('/FlateDecode') ? inflateSync(packed) : packed };
}

function pageObjects(objects: ReadonlyMap<number, string>): readonly string[] {
  const tree = [...objects.values()].find((head) => /\/Type \/Pages\b/.test(head)) ?? '';
  const kids = /\/Kids \[([^\]]*)\]/.exec(tree)?.[1] ?? '';
  return [...kids.matchAll(/(\d+) 0 R/g)].map(([, number]) => objects.get(Number(number)) ?? '');
}

type GlyphTexts = ReadonlyMap<number, string>;

/** `/F1` → what each glyph number means, from the font's ToUnicode stream. */
function fontMaps(found: ReadonlyMap<number, PdfObject>): ReadonlyMap<string, GlyphTexts> {
  const maps = new Map<string, GlyphTexts>();
  for (const { head } of found.values()) {
    for (const [, name = '', number] of head.matchAll(/\/(F\d+) (\d+) 0 R/g)) {
      const font = found.get(Number(number))?.head ?? '';
      const table = found.get(Number(/\/ToUnicode (\d+) 0 R/.exec(font)?.[1]))?.stream;
      if (table !== null && table !== undefined)
        maps.set(name, glyphTexts(Buffer.from(table).toString('latin1')));
    }
  }
  return maps;
}

function glyphTexts(table: string): GlyphTexts {
  const texts = new Map<number, string>();
  for (const [, first = '0', list = ''] of table.matchAll(/<([0-9a-f]+)> <[0-9a-f]+> \[([^\]]*)\]/gi)) {
    [...list.matchAll(/<([^>]*)>/g)].forEach(([, codes = ''], index) => {
      const units = codes.split(' ').map((code) => Number.parseInt(code, 16));
      texts.set(Number.parseInt(first, 16) + index, String.fromCharCode(...units));
    });
  }
  return texts;
}

function pageText(content: string, fonts: ReadonlyMap<string, GlyphTexts>): string {
  let font: GlyphTexts = new Map();
  const lines: string[] = [];
  for (const match of content.matchAll(/\/(F\d+) [\d.]+ Tf|\[([^\]]*)\] TJ/g)) {
    const [, name, glyphs] = match;
    if (name !== undefined) font = fonts.get(name) ?? new Map();
    if (glyphs === undefined) continue;
    const numbers = [...glyphs.matchAll(/<([0-9a-f]+)>/gi)].flatMap(
      ([, hex = '']) => hex.match(/.{4}/g) ?? [],
    );
    lines.push(numbers.map((number) => font.get(Number.parseInt(number, 16)) ?? '?').join(''));
  }
  return lines.join('\n');
}
