import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { laneChart } from '../charts/lane-chart.ts';
import { responseChart } from '../charts/response-chart.ts';
import { text } from '../scene/items.ts';
import type { Scene } from '../scene/scene.ts';
import { spot } from '../scene/spot.ts';
import { LANES, RESPONSE } from '../testing/sample-charts.ts';
import {
  BOX_FRONT,
  BOX_ISOMETRIC,
  BOX_SECTION,
  CAVITY,
  PANEL,
  SHEET,
  SURVEY,
} from '../testing/sample-views.ts';
import { allNodes, readXml, type XmlNode } from '../testing/xml-check.ts';
import { boxFront } from '../views/box-front.ts';
import { boxIsometric } from '../views/box-isometric.ts';
import { boxPlan, boxSection } from '../views/box-view.ts';
import { cavityPlan, cavitySection } from '../views/cavity-view.ts';
import { panelDrawing } from '../views/panel-drawing.ts';
import { sheetMap } from '../views/sheet-map.ts';
import { escapeXml, renderSvg } from './render-svg.ts';
import { type SvgElement, sceneToSvgElements } from './svg-elements.ts';

const SCENES: readonly (readonly [string, Scene])[] = [
  ['cavity section', cavitySection(CAVITY)],
  ['survey', cavitySection(SURVEY)],
  ['cavity plan', cavityPlan(CAVITY)],
  ['box section', boxSection(BOX_SECTION)],
  ['box plan', boxPlan(BOX_SECTION)],
  ['baffle', boxFront(BOX_FRONT)],
  ['isometric', boxIsometric(BOX_ISOMETRIC)],
  ['panel', panelDrawing(PANEL)],
  ['sheet map', sheetMap(SHEET)],
  ['response', responseChart(RESPONSE)],
  ['lanes', laneChart(LANES)],
];

/** A drawing of one line of words. */
const sign = (words: string, title = words): Scene => ({
  title,
  description: words,
  widthPt: 100,
  heightPt: 50,
  world: null,
  scaleLabel: null,
  layers: [{ id: words, items: [text(spot(5, 5), words, { key: words })] }],
});

const textsOf = (node: XmlNode): string[] =>
  allNodes(node)
    .filter(({ tag }) => tag === 'text')
    .map((each) => each.text);

describe('renderSvg', () => {
  it.each(SCENES)('writes a well-formed, named %s in both themes', (_name, scene) => {
    for (const theme of ['css-variables', 'print'] as const) {
      const svg = renderSvg(scene, { theme, idPrefix: 'd1' });
      const root = readXml(svg);
      expect(root.tag).toBe('svg');
      expect(root.attributes.get('role')).toBe('img');
      expect(root.attributes.get('viewBox')).toBe(`0 0 ${scene.widthPt} ${scene.heightPt}`);
      expect(root.attributes.get('aria-labelledby')).toBe('d1-title d1-desc');
      expect(root.children[0]).toMatchObject({ tag: 'title', text: scene.title });
      expect(root.children[1]).toMatchObject({ tag: 'desc', text: scene.description });
      expect(svg).not.toMatch(/NaN|Infinity|undefined|null/);
      expect(svg.includes('var(--')).toBe(theme === 'css-variables');
    }
  });

  it('scales its height with the width it is given', () => {
    const root = readXml(renderSvg(sign('A'), { theme: 'print', idPrefix: 'd', widthPx: 400 }));
    expect(root.attributes.get('width')).toBe('400');
    expect(root.attributes.get('height')).toBe('200');
  });

  it.each([
    '</text><script>alert(1)</script>',
    '" onload="alert(1)',
    '\' & < > " &amp; ]]>',
    '<!--', // a comment that never ends
    '&#x0;',
  ])('shows hostile words as words: %s', (words) => {
    const svg = renderSvg(sign(words), { theme: 'css-variables', idPrefix: words });
    const root = readXml(svg);
    expect(textsOf(root)).toEqual([words]);
    expect(allNodes(root).map(({ tag }) => tag)).toEqual(['svg', 'title', 'desc', 'g', 'g', 'text']);
    expect(allNodes(root).some(({ attributes }) => attributes.get('data-key') === words)).toBe(true);
  });

  it('stays well-formed for any text at all', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'binary', maxLength: 30 }), (words) => {
        const root = readXml(renderSvg(sign(words), { theme: 'print', idPrefix: 'x' }));
        expect(root.tag).toBe('svg');
      }),
    );
  });

  it('thickens lines where asked, and not the letters', () => {
    const scene = boxSection(BOX_SECTION);
    const widths = (strokeScale: number): number[] =>
      allNodes(readXml(renderSvg(scene, { theme: 'print', idPrefix: 'x', strokeScale }))).flatMap(
        ({ attributes }) => {
          const width = attributes.get('stroke-width');
          return width === undefined ? [] : [Number(width)];
        },
      );
    expect(widths(2).length).toBe(widths(1).length);
    expect(widths(2)[0]).toBeCloseTo(2 * (widths(1)[0] ?? 0), 2);
  });
});

describe('escapeXml', () => {
  it('drops what XML forbids and keeps the rest', () => {
    expect(escapeXml('a\u0000b\u000bc\td\ud800e Ж ½″ ⌀ × 😀')).toBe('abc\tde Ж ½″ ⌀ × 😀');
  });
});

describe('sceneToSvgElements', () => {
  const flat = (element: SvgElement): SvgElement[] => [element, ...element.children.flatMap(flat)];

  it('names every interactive dimension, once', () => {
    const keys = sceneToSvgElements(boxSection(BOX_SECTION))
      .flatMap(flat)
      .flatMap(({ props }) => (props['data-key'] === undefined ? [] : [props['data-key']]));
    expect(keys).toEqual(['depthMm', 'heightMm', 'topMm']);
  });

  it('gives every element an id of its own and nothing that JSON loses', () => {
    for (const [, scene] of SCENES) {
      const elements = sceneToSvgElements(scene);
      const ids = elements.flatMap(flat).map(({ id }) => id);
      expect(new Set(ids).size).toBe(ids.length);
      expect(JSON.parse(JSON.stringify(elements))).toEqual(elements);
    }
  });
});
