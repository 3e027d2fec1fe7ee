// A scene as one SVG document, for the web page, for print and for files.
import type { Scene } from '../scene/scene.ts';
import { type SvgElement, type SvgTheme, sceneToSvgElements } from './svg-elements.ts';

export type RenderSvgOptions = {
  readonly theme: SvgTheme;
  /** Prefix of the ids of title and description: unique on the page. */
  readonly idPrefix: string;
  /** Fixed width on screen; null = as wide as its place allows. */
  readonly widthPx?: number | null;
  readonly strokeScale?: number;
};

/** Well-formed SVG with an accessible name and description. Text is escaped, whatever a person typed. */
export function renderSvg(scene: Scene, options: RenderSvgOptions): string {
  const { theme, strokeScale = 1, widthPx = null } = options;
  const prefix = options.idPrefix.replace(/[^A-Za-z0-9_-]/g, '-');
  const { widthPt, heightPt } = scene;
  const size =
    widthPx === null
      ? ''
      : ` width="${widthPx}" height="${Math.round((widthPx * heightPt * 100) / widthPt) / 100}"`;
  const body = sceneToSvgElements(scene, { theme, strokeScale }).map(writeElement).join('');
  return (
    `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${widthPt} ${heightPt}"${size} role="img"` +
    ` aria-labelledby="${prefix}-title ${prefix}-desc">` +
    `<title id="${prefix}-title">${escapeXml(scene.title)}</title>` +
    `<desc id="${prefix}-desc">${escapeXml(scene.description)}</desc>${body}</svg>`
  );
}

function writeElement({ tag, props, children, text }: SvgElement): string {
  const attributes = Object.entries(props)
    .map(([name, value]) => ` ${attributeName(name)}="${escapeXml(String(value))}"`)
    .join('');
  const inside = text === null ? children.map(writeElement).join('') : escapeXml(text);
  return inside === '' ? `<${tag}${attributes}/>` : `<${tag}${attributes}>${inside}</${tag}>`;
}

/** `strokeWidth` → `stroke-width`; `data-key` stays. */
const attributeName = (name: string): string =>
  name.replace(/[A-Z]/g, (letter) => `-${letter.toLowerCase()}`);

const ENTITIES: Readonly<Record<string, string>> = {
  '&': '&amp;',
  '<': '&lt;',
  '>': '&gt;',
  '"': '&quot;',
  "'": '&#39;',
};

/** Escapes markup and drops what XML 1.0 does not allow at all: most control signs, lone surrogates, U+FFFE, U+FFFF. */
export function escapeXml(text: string): string {
  let escaped = '';
  for (const sign of text) {
    const code = sign.codePointAt(0) ?? 0;
    escaped += allowedInXml(code) ? (ENTITIES[sign] ?? sign) : '';
  }
  return escaped;
}

function allowedInXml(code: number): boolean {
  if (code < 0x20) return code === 0x9 || code === 0xa || code === 0xd;
  const surrogate = code >= 0xd800 && code <= 0xdfff;
  return !surrogate && code !== 0xfffe && code !== 0xffff;
}
