import { isRefusal } from '@gusset/units';
import { describe, expect, it } from 'vitest';
import { engine } from './sheets.ts';

const request = {
  id: 'q1',
  kerf: 32,
  trim: 100,
  guillotine: true,
  sheets: [{ id: 'full', w: 24_400, h: 12_200, count: null, cost: 62, grain: 'x' }],
  parts: [
    { id: 'a', w: 12_084, h: 5_984, canRotate: true, grain: 'w' },
    { id: 'b', w: 12_084, h: 5_984, canRotate: true, grain: 'w' },
    { id: 'c', w: 5_984, h: 12_084, canRotate: true, grain: 'h' },
    { id: 'd', w: 12_084, h: 5_984, canRotate: false, grain: null },
  ],
};

function solve(change: object = {}) {
  return engine.solve(engine.inputSchema.parse({ ...request, ...change }), { seconds: 0.2, seed: 1 });
}

describe('sheets', () => {
  it('fills a sheet to the last tenth of a millimetre in the document unit', async () => {
    const answer = engine.outputSchema.parse(await solve());
    expect(answer.sheets.map(({ sheet }) => sheet)).toEqual(['full']);
    // usable 24200 x 12000 = (12084 + 32 + 12084) x (5984 + 32 + 5984)
    const corners = answer.sheets[0]?.placements.map(({ x, y }) => `${x} ${y}`).toSorted();
    expect(corners).toEqual(['100 100', '100 6116', '12216 100', '12216 6116']);
    expect(answer.sheets[0]?.placements.find(({ part }) => part === 'c')?.rotated).toBe(true);
    expect([answer.lowerBound, answer.cost]).toEqual([1, 62]);
    expect(answer).not.toHaveProperty('unplaced');
  });

  it('lists a sheet as often as it is used and adds up its cost', async () => {
    const answer = engine.outputSchema.parse(await solve({ kerf: 33 }));
    // a tenth more of kerf and no two parts fit beside or above each other
    expect(answer.sheets.map(({ sheet }) => sheet)).toEqual(['full', 'full', 'full', 'full']);
    expect([answer.lowerBound, answer.cost]).toEqual([4, 248]);
  });

  it('names what the sheets at hand have no room for', async () => {
    const sheets = [{ id: 'half', w: 12_300, h: 12_200, count: 1 }];
    const answer = engine.outputSchema.parse(await solve({ sheets }));
    expect(answer.unplaced).toHaveLength(2);
  });

  it('refuses a part larger than any sheet at the door name of its side', async () => {
    const answer = await solve({ parts: [{ id: 'long', w: 24_201, h: 100 }] });
    expect(isRefusal(answer) && answer.refusal).toMatchObject({ field: 'parts[0].w', got: 24_201 });
  });
});
