import { describe, expect, it } from 'vitest';
import { boxResult } from '../box/box-fixture.ts';
import { boxPanels } from './box-panels.ts';
import { cuttingResult } from './cutting-fixture.ts';

const box = boxResult();
const first = { id: 'a', number: 1, name: 'Bass box', copies: 1, sound: null, box };
const rear = { id: 'b', number: 2, name: 'Rear box', copies: 2, sound: null, box };
const pieces = (upstream: Parameters<typeof boxPanels>[0]) => cuttingResult({}, undefined, upstream).pieces;

describe('boxPanels', () => {
  it('are the box’s own where the job has one', () => {
    expect(boxPanels({ box })).toEqual(box.box.panels);
    expect(boxPanels({ box: null })).toBeNull();
  });
  it('are marked by their box and never share an id where there are several', () => {
    const panels = boxPanels({ box, enclosures: [first, rear] }) ?? [];
    expect(panels).toHaveLength(2 * box.box.panels.length);
    expect(new Set(panels.map(({ id }) => id)).size).toBe(panels.length);
    expect(panels[0]?.mark).toBe(`1-${box.box.panels[0]?.mark}`);
    expect(panels.at(-1)?.mark).toBe(`2-${box.box.panels.at(-1)?.mark}`);
  });
  it('are cut as often as the box is built, a box that says nothing not at all', () => {
    const once = pieces({ box });
    expect(pieces({ box, enclosures: [first, rear] })).toBe(3 * once);
    expect(pieces({ box, enclosures: [first, { ...rear, box: null }] })).toBe(once);
  });
});
