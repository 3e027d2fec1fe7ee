// Boxes with known figures as ngspice circuits (truth/make-sweeps.ts), with seeded noise of a meter on top.
import { readFileSync } from 'node:fs';
import { type SoundSystemInput, soundSystemSchema } from '@gusset/contracts/acoustics';
import type { BuiltBoxFit, BuiltDifference, SweepColumns } from '@gusset/contracts/measurement';
import { isRefusal } from '@gusset/units';
import { describe, expect, it } from 'vitest';
import { medlar12, quince10 } from '../../truth/drivers.ts';
import { solveResponse } from '../response.ts';
import { boxImpedance } from './box-impedance.ts';
import { fitBuiltBox } from './built-box.ts';
import { seededNoise } from './seeded-noise.ts';

type Sweeps = {
  readonly sweeps: readonly {
    readonly id: string;
    readonly input: SoundSystemInput;
    readonly columns: SweepColumns;
  }[];
};
const { sweeps }: Sweeps = JSON.parse(
  readFileSync(new URL('../../truth/sweeps.json', import.meta.url), 'utf8'),
);

function truth(id: string) {
  const found = sweeps.find((each) => each.id === id);
  if (found === undefined) throw new Error(`no sweep ${id}`);
  return found;
}

function noisy({ frequenciesHz, values, phaseRad }: SweepColumns, share: number, seed: number): SweepColumns {
  const draw = seededNoise(seed);
  return {
    frequenciesHz,
    values: values.map((ohm) => ohm * (1 + share * draw())),
    phaseRad: phaseRad?.map((rad) => rad + share * draw()) ?? null,
  };
}

const quince = { ...quince10, leMh: 0.4, l2Mh: 1.3, r2Ohm: 4.2 } as const;
const roundPort = (lengthMm: number, count = 1) =>
  ({
    mouth: { shape: 'round', diameterMm: 100 },
    count,
    outerEnd: { kind: 'flanged' },
    innerEnd: { kind: 'free' },
    sizing: { by: 'length', lengthMm },
  }) as const;
const base = { frequenciesHz: [10], source: { voltageVrms: 1 } } as const;

/** As drawn: 55 L and a 370 mm port. The built one of `vented` has 52.9 L and 384 mm. */
const DRAWN: SoundSystemInput = {
  ...base,
  driver: medlar12,
  enclosure: { kind: 'vented', chamber: { netLitres: 55, ql: 7 }, port: roundPort(370) },
};
const DRAWN_CLOSED: SoundSystemInput = {
  ...base,
  driver: quince,
  enclosure: { kind: 'closed', chamber: { netLitres: 30, ql: 15 } },
};

function fitted(
  drawn: SoundSystemInput,
  columns: SweepColumns,
  blocked: SweepColumns | null = null,
): BuiltBoxFit {
  const answer = fitBuiltBox(drawn, columns, blocked);
  if (isRefusal(answer)) throw new Error(JSON.stringify(answer.refusal));
  return answer;
}

function figure({ differences }: BuiltBoxFit, code: BuiltDifference['code']): BuiltDifference {
  const found = differences.find((each) => each.code === code);
  if (found === undefined) throw new Error(`no ${code}`);
  return found;
}

describe('boxImpedance', () => {
  it.each(sweeps)('is the circuit of the response and of ngspice: $id', ({ input, columns }) => {
    const { enclosure, driver, array, source, air } = soundSystemSchema.parse(input);
    if (enclosure.kind !== 'closed' && enclosure.kind !== 'vented') throw new Error(enclosure.kind);
    const port = enclosure.kind === 'vented' ? enclosure.port : null;
    const impedanceAt = boxImpedance({ driver, array, chamber: enclosure.chamber, port, source, air });
    const solved = solveResponse({ ...input, frequenciesHz: columns.frequenciesHz });
    if (isRefusal(solved)) throw new Error(JSON.stringify(solved.refusal));
    for (const [i, hz] of columns.frequenciesHz.entries()) {
      const { re, im } = impedanceAt(hz);
      expect(Math.hypot(re, im) / (solved.impedanceOhm[i] ?? 0)).toBeCloseTo(1, 9);
      expect(Math.hypot(re, im) / (columns.values[i] ?? 0)).toBeCloseTo(1, 5);
    }
  });
});

describe('fitBuiltBox, vented', () => {
  it('finds a box 2.1 L smaller and a port 14 mm longer than drawn', () => {
    const found = fitted(DRAWN, truth('vented').columns);
    expect(figure(found, 'net-volume').difference).toBeCloseTo(-2.1, 1);
    expect(figure(found, 'port-length').difference).toBeCloseTo(14, 0);
    expect(figure(found, 'leak-q').built.value).toBeCloseTo(8, 1);
    expect(figure(found, 'net-volume').beyond).toBe(true);
    expect(figure(found, 'port-length').beyond).toBe(true);
    expect(found.residualPercent).toBeLessThan(0.1);
  });
  it.each([1, 2, 3, 4, 5, 6])(
    'finds them within stated doubt under half a percent of noise, seed %i',
    (seed) => {
      const found = fitted(DRAWN, noisy(truth('vented').columns, 0.005, seed));
      const net = figure(found, 'net-volume');
      expect(Math.abs(net.built.value - 52.9)).toBeLessThan(Math.min(0.8, 4 * net.built.plusMinus));
      const port = figure(found, 'port-length');
      expect(Math.abs(port.built.value - 384)).toBeLessThan(4 * port.built.plusMinus + 1);
      expect(Math.abs(figure(found, 'tuning').built.value / 31 - 1)).toBeLessThan(0.02);
      expect(Math.abs(figure(found, 'leak-q').built.value - 8)).toBeLessThan(1);
    },
  );
  it('says nothing of a box built as drawn round a softer driver', () => {
    const found = fitted(DRAWN, noisy(truth('vented-softened').columns, 0.003, 3));
    expect(figure(found, 'net-volume').beyond).toBe(false);
    expect(figure(found, 'port-length').beyond).toBe(false);
    expect(figure(found, 'free-air').built.value).toBeCloseTo(27 / Math.sqrt(1.15), 0);
  });
  it('reads two drivers of two coils behind a cable', () => {
    const { input, columns } = truth('vented-two-dual-coils');
    const drawn: SoundSystemInput = {
      ...input,
      enclosure: { kind: 'vented', chamber: { netLitres: 125, ql: 7 }, port: roundPort(310, 2) },
    };
    const found = fitted(drawn, columns);
    expect(figure(found, 'net-volume').built.value).toBeCloseTo(118, 0);
    expect(figure(found, 'port-length').built.value).toBeCloseTo(300, 0);
  });
  it('agrees with the three peaks of open and shut box where neither coil nor leak shifts them', () => {
    const drawn: SoundSystemInput = {
      ...DRAWN,
      driver: { ...medlar12, leMh: 0 },
      enclosure: { kind: 'vented', chamber: { netLitres: 55, ql: 50 }, port: roundPort(370) },
    };
    const { threePeaks } = fitted(drawn, truth('vented-bare').columns, truth('vented-bare-shut').columns);
    expect(Math.abs(threePeaks?.percent ?? 100)).toBeLessThan(0.5);
  });
  it('stays within the bias that 1.5 mH gives the three peaks', () => {
    const { threePeaks } = fitted(DRAWN, truth('vented').columns, truth('vented-shut').columns);
    expect(Math.abs(threePeaks?.percent ?? 100)).toBeLessThan(3);
    expect(threePeaks?.lowerHz).toBeLessThan(threePeaks?.blockedHz ?? 0);
    expect(threePeaks?.blockedHz).toBeLessThan(threePeaks?.upperHz ?? 0);
  });
  it('refuses a sweep with one peak', () => {
    expect(fitBuiltBox(DRAWN, truth('vented-shut').columns, null)).toMatchObject({
      refusal: { field: 'sweep' },
    });
  });
  it('refuses a shut box whose peak is no shut box’s', () => {
    const answer = fitBuiltBox(DRAWN, truth('vented').columns, truth('vented').columns);
    expect(answer).toMatchObject({ refusal: { field: 'blocked' } });
  });
  it('refuses a sweep buried in noise', () => {
    const buried = noisy(truth('vented').columns, 0.9, 5);
    const answer = fitBuiltBox(
      DRAWN,
      { ...buried, values: buried.values.map((ohm) => Math.abs(ohm) + 0.1) },
      null,
    );
    expect(answer).toMatchObject({ refusal: { field: 'sweep' } });
  });
});

describe('fitBuiltBox, closed', () => {
  it('finds a box 2.1 L smaller than drawn', () => {
    const found = fitted(DRAWN_CLOSED, truth('closed').columns);
    expect(figure(found, 'net-volume').difference).toBeCloseTo(-2.1, 1);
    expect(figure(found, 'net-volume').beyond).toBe(true);
    expect(figure(found, 'resonance').built.value).toBeGreaterThan(figure(found, 'resonance').drawn ?? 0);
  });
  it.each([1, 2, 3, 4])('finds it under half a percent of noise, seed %i', (seed) => {
    const net = figure(fitted(DRAWN_CLOSED, noisy(truth('closed').columns, 0.005, seed)), 'net-volume');
    expect(Math.abs(net.built.value - 27.9)).toBeLessThan(Math.min(0.5, 4 * net.built.plusMinus));
  });
  it('says how far a stiffer suspension would move the litres', () => {
    const { litresPerResonancePercent } = fitted(DRAWN_CLOSED, truth('closed').columns);
    // Worked by hand: fc held, mass held, V goes as 1/(fc² - fs²): dV/V = 2 fs²/(fc² - fs²) = 2/alpha per share of fs.
    const alpha = 48 / 27.9;
    expect(litresPerResonancePercent).toBeCloseTo(27.9 * (2 / alpha) * 0.01, 1);
  });
  it('refuses what has more chambers than one', () => {
    const baffle: SoundSystemInput = { ...base, driver: quince, enclosure: { kind: 'infinite-baffle' } };
    expect(fitBuiltBox(baffle, truth('closed').columns, null)).toMatchObject({
      refusal: { field: 'drawn.enclosure.kind' },
    });
  });
});
