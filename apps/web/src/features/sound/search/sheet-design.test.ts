import { EMPTY_DESIGN, EMPTY_SOUND_INPUT } from '@gusset/contracts/sound';
import { enclosureOf } from '@gusset/sheets';
import { describe, expect, it } from 'vitest';
import { FOUND } from './search-design.fixture.ts';
import { searchDefaults, takenDesign } from './sheet-design.ts';

describe('takenDesign', () => {
  it('fills the sheet so that its circuit is the one that was searched', () => {
    expect(enclosureOf({ ...EMPTY_DESIGN, ...takenDesign(FOUND, EMPTY_DESIGN) })).toEqual(FOUND.enclosure);
  });
  it('splits a bandpass into its two chambers', () => {
    const { enclosure } = FOUND;
    if (enclosure.kind !== 'vented') throw new Error('the fixture is vented');
    const bandpass = {
      ...FOUND,
      kind: 'single-tuned-bandpass' as const,
      enclosure: {
        kind: 'single-tuned-bandpass' as const,
        rear: { ...enclosure.chamber, netLitres: 22 },
        front: { ...enclosure.chamber, netLitres: 40.4 },
        frontPort: enclosure.port,
      },
    };
    const design = { ...EMPTY_DESIGN, ...takenDesign(bandpass, EMPTY_DESIGN) };
    expect([design.targetNet?.litres, design.front.net?.litres]).toEqual([22, 40.4]);
    expect(enclosureOf(design)).toEqual(bandpass.enclosure);
  });
  it('takes drivers, wiring and power, and keeps the filters', () => {
    const highPass = { alignment: 'butterworth' as const, order: 4, corner: null };
    const design = { ...EMPTY_DESIGN, highPass, ...takenDesign(FOUND, EMPTY_DESIGN) };
    expect(design).toMatchObject({ count: 2, seriesPerString: 2, coilWiring: 'parallel', highPass });
    expect(design.drive).toEqual({ watts: 450, typed: '450' });
  });
});

describe('searchDefaults', () => {
  it('knows nothing of an empty sheet but its lining and its car', () => {
    expect(searchDefaults(EMPTY_SOUND_INPUT, { driver: null, longestCabinM: 2.5 })).toMatchObject({
      netLitres: null,
      watts: null,
      loadOhm: null,
      cabin: { kind: 'shelf', longestM: 2.5 },
      losses: { fillFactor: 1, ql: 15, qa: null },
      radiators: [],
    });
  });
});
