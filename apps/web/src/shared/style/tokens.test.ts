import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';

const css = readFileSync(new URL('./tokens.css', import.meta.url), 'utf8');

/** `--name: light-dark(#day, #night)` as two tables. */
const readTokens = (): Readonly<Record<'day' | 'night', Map<string, string>>> => {
  const pairs = [...css.matchAll(/--(?<name>[\w-]+): light-dark\((?<day>#\w{6}), (?<night>#\w{6})\)/gu)];
  const table = (theme: 'day' | 'night') =>
    new Map(pairs.map(({ groups }) => [groups?.name ?? '', groups?.[theme] ?? '']));
  return { day: table('day'), night: table('night') };
};

/** Relative luminance, WCAG 2.2. */
const luminance = (hex: string): number => {
  const [r = 0, g = 0, b = 0] = [1, 3, 5]
    .map((at) => Number.parseInt(hex.slice(at, at + 2), 16) / 255)
    .map((channel) => (channel <= 0.04045 ? channel / 12.92 : ((channel + 0.055) / 1.055) ** 2.4));
  return 0.2126 * r + 0.7152 * g + 0.0722 * b;
};

const contrast = (a: string, b: string): number => {
  const [light = 0, dark = 0] = [luminance(a), luminance(b)].sort((x, y) => y - x);
  return (light + 0.05) / (dark + 0.05);
};

const GROUNDS = ['paper', 'film', 'sheet'] as const;
const WASHES = ['mark', 'pencil', 'brass', 'pass'] as const;
/** Body text and captions, AAA. */
const BODY_RATIO = 7;
/** Coloured words beside a mark, AA with room. */
const MARK_RATIO = 6;
/** Edges of fields and other parts of controls, WCAG 1.4.11. */
const EDGE_RATIO = 3;

describe.each(['day', 'night'] as const)('the %s theme', (theme) => {
  const tokens = readTokens()[theme];
  const colour = (name: string): string => {
    const hex = tokens.get(name);
    if (!hex) throw new Error(`tokens.css has no --${name}`);
    return hex;
  };

  it.each(GROUNDS)('shows text and captions at AAA on %s', (ground) => {
    expect(contrast(colour('ink'), colour(ground))).toBeGreaterThanOrEqual(BODY_RATIO);
    expect(contrast(colour('ink-2'), colour(ground))).toBeGreaterThanOrEqual(BODY_RATIO);
  });

  it.each(WASHES)('shows %s words on every ground and on its own wash', (tone) => {
    for (const ground of [...GROUNDS, `${tone}-wash`]) {
      expect(contrast(colour(tone), colour(ground))).toBeGreaterThanOrEqual(MARK_RATIO);
    }
    expect(contrast(colour('ink'), colour(`${tone}-wash`))).toBeGreaterThanOrEqual(BODY_RATIO);
  });

  it.each(GROUNDS)('shows the edges of fields on %s', (ground) => {
    expect(contrast(colour('edge'), colour(ground))).toBeGreaterThanOrEqual(EDGE_RATIO);
  });

  it('shows words on filled buttons at AAA', () => {
    expect(contrast(colour('ink-inverse'), colour('ink'))).toBeGreaterThanOrEqual(BODY_RATIO);
  });
});
