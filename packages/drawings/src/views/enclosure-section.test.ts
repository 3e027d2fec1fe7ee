import { describe, expect, it } from 'vitest';
import type { SceneItem } from '../scene/scene.ts';
import { renderSvg } from '../svg/render-svg.ts';
import { readXml } from '../testing/xml-check.ts';
import { type EnclosureSectionInput, enclosureSection } from './enclosure-section.ts';

const CLOSED: EnclosureSectionInput = {
  title: 'Closed box',
  description: 'One closed chamber behind the drivers.',
  rear: { note: '30.0 L', vent: null },
  front: null,
  rearShare: 0.5,
  radiatorNote: null,
  isIsobaric: false,
};
const VENT = { shape: 'round', isFlared: true, note: '32.0 Hz' } as const;
const KINDS: Readonly<Record<string, EnclosureSectionInput>> = {
  wall: { ...CLOSED, rear: null },
  closed: CLOSED,
  vented: { ...CLOSED, rear: { note: '60.0 L', vent: VENT } },
  radiators: { ...CLOSED, radiatorNote: '28.0 Hz' },
  bandpass: { ...CLOSED, front: { note: '18.0 L', vent: { ...VENT, shape: 'slot', note: '52.0 Hz' } } },
  'two ports': { ...CLOSED, rear: { note: '50.0 L', vent: VENT }, front: { note: '24.0 L', vent: VENT } },
};

function itemsOf(input: EnclosureSectionInput): readonly SceneItem[] {
  return enclosureSection(input).layers.flatMap(({ items }) => items);
}
const wordsOf = (input: EnclosureSectionInput): readonly string[] =>
  itemsOf(input).flatMap((item) => (item.kind === 'text' ? [item.text] : []));
const hatched = (input: EnclosureSectionInput, kind: string): number =>
  itemsOf(input).filter((item) => item.kind === 'hatch' && item.hatch === kind).length;

describe('enclosureSection', () => {
  it.each(Object.entries(KINDS))('draws %s inside its own frame, as an SVG that reads', (_, input) => {
    const scene = enclosureSection(input, { widthPt: 240, heightPt: 140, textPt: 8 });
    for (const item of scene.layers.flatMap(({ items }) => items)) {
      const spots = item.kind === 'polyline' ? item.points : item.kind === 'region' ? item.rings.flat() : [];
      for (const { x, y } of spots) {
        expect(x).toBeGreaterThanOrEqual(0);
        expect(x).toBeLessThanOrEqual(240);
        expect(y).toBeGreaterThanOrEqual(0);
        expect(y).toBeLessThanOrEqual(140);
      }
    }
    expect(() => readXml(renderSvg(scene, { theme: 'print', idPrefix: 'e' }))).not.toThrow();
  });
  it('names what is known of each chamber and tuning', () => {
    expect(wordsOf(KINDS['two ports'] ?? CLOSED)).toEqual(
      expect.arrayContaining(['50.0 L', '24.0 L', '32.0 Hz']),
    );
  });
  it('hatches the divider against the shell, and one motor more for a pair', () => {
    expect(hatched(KINDS.bandpass ?? CLOSED, 'counter-panel')).toBe(2);
    expect(hatched(CLOSED, 'counter-panel')).toBe(0);
    expect(hatched({ ...CLOSED, isIsobaric: true }, 'body')).toBe(hatched(CLOSED, 'body') + 1);
  });
  it('keeps a small chamber large enough for its words', () => {
    const dividerAt = (rearShare: number): number => {
      const panel = itemsOf({ ...(KINDS.bandpass ?? CLOSED), rearShare }).find(
        (item) => item.kind === 'hatch' && item.hatch === 'counter-panel',
      );
      return panel?.kind === 'hatch' ? (panel.rings[0]?.[0]?.x ?? 0) : 0;
    };
    expect(dividerAt(0.01)).toBe(dividerAt(0.3));
    expect(dividerAt(0.6)).toBeGreaterThan(dividerAt(0.4));
  });
});
