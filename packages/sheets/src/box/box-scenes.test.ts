import { keyedPlaces, renderSvg, type Scene } from '@gusset/drawings';
import { describe, expect, it } from 'vitest';
import {
  BOX_FACTS,
  BOX_INPUT,
  BOX_UPSTREAM,
  boxResult,
  length,
  soundResult,
  squareCavity,
} from './box-fixture.ts';
import { boxFrontScene, boxIsometricScene } from './box-front-scene.ts';
import { boxPlanScene, sidesAt } from './box-plan-scene.ts';
import { boxSectionScene } from './box-section-scene.ts';

const cavity = squareCavity();
const wedge = {
  shape: 'wedge' as const,
  outside: { ...BOX_INPUT.outside, depthTop: length(220) },
};
const keysOf = (scene: Scene | null) =>
  (scene === null ? [] : keyedPlaces(scene).map(({ key }) => key)).sort();
const wordsOf = (scene: Scene) => renderSvg(scene, { theme: 'print', idPrefix: 't' });

describe('the drawings of the box', () => {
  it('carry every dimension that can be changed on them', () => {
    expect(keysOf(boxSectionScene(boxResult(wedge), cavity))).toEqual([
      'outside.depth',
      'outside.depthTop',
      'outside.height',
    ]);
    expect(keysOf(boxSectionScene(boxResult(), cavity))).toEqual(['outside.depth', 'outside.height']);
    expect(keysOf(boxPlanScene(boxResult(), cavity))).toEqual(['outside.width']);
    expect(keysOf(boxFrontScene(boxResult()))).toEqual(['outside.height', 'outside.width']);
  });
  it('do so without a car too', () => {
    const result = boxResult(wedge, BOX_FACTS, { sound: soundResult() });
    expect(keysOf(boxSectionScene(result, null))).toEqual([
      'outside.depth',
      'outside.depthTop',
      'outside.height',
    ]);
    expect(keysOf(boxPlanScene(result, null))).toEqual(['outside.width']);
  });
  it('write the sizes, the opening and the tightest gap', () => {
    const section = wordsOf(boxSectionScene(boxResult(), cavity));
    for (const figure of ['320', '380', 'opening 500', 'net 53.0 L', 'tightest 15']) {
      expect(section).toContain(figure);
    }
    const plan = wordsOf(boxPlanScene(boxResult(), cavity));
    for (const figure of ['600', 'opening 950', '200']) expect(plan).toContain(figure);
  });
  it('hold no figure that cannot be drawn', () => {
    const result = boxResult({ ...wedge, place: { by: 'pose', x: length(60), y: length(8), tiltDeg: -4 } });
    const scenes = [
      boxSectionScene(result, cavity),
      boxPlanScene(result, cavity),
      boxFrontScene(result),
      boxIsometricScene(result),
    ];
    for (const scene of scenes) expect(JSON.stringify(scene)).not.toContain('null,null');
    expect(scenes.map((scene) => (scene === null ? '' : wordsOf(scene))).join()).not.toMatch(/NaN|Infinity/);
  });
  it('show two drivers where the sound sheet counts two', () => {
    const two = { ...BOX_UPSTREAM, sound: soundResult({ count: 2 }) };
    const front = boxFrontScene(boxResult({}, BOX_FACTS, two));
    expect(front === null ? '' : wordsOf(front)).toContain('driver 2');
  });
  it('are not drawn on the front of a box without a baffle there, but on its back', () => {
    const back = boxResult({ baffle: { face: 'back', doubler: null } });
    expect(boxFrontScene(back)?.title).toBe('Baffle, seen from the back');
  });
});

describe('sidesAt', () => {
  it('goes round the space once, open at the end of the way out', () => {
    const edges = sidesAt(cavity, 200);
    expect(edges.map(({ kind }) => kind).filter((kind) => kind === 'open')).toHaveLength(1);
    edges.forEach(({ to }, index) => {
      expect(edges[(index + 1) % edges.length]?.from).toEqual(to);
    });
    expect(Math.max(...edges.map(({ from }) => from.xMm))).toBeCloseTo(800, 6);
  });
  it('is nothing above the space', () => {
    expect(sidesAt(cavity, 900)).toEqual([]);
  });
});
