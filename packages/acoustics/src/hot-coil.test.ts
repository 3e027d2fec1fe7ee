import {
  type HotCoilSettingInput,
  hotCoilEstimateSchema,
  type SoundSystemInput,
} from '@gusset/contracts/acoustics';
import { isRefusal } from '@gusset/units';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { medlar12, quince10 } from '../truth/drivers.ts';
import { estimateHotCoil } from './hot-coil.ts';

const baffle = (voltageVrms: number, driver: SoundSystemInput['driver'] = quince10): SoundSystemInput => ({
  frequenciesHz: [20, 40, 80, 5_000],
  source: { voltageVrms },
  driver,
  enclosure: { kind: 'closed', chamber: { netLitres: 30 } },
});

function answered(input: SoundSystemInput, setting: HotCoilSettingInput = {}) {
  const result = estimateHotCoil(input, setting);
  if (isRefusal(result)) throw new Error(JSON.stringify(result.refusal));
  return result;
}

describe('estimateHotCoil', () => {
  it('takes 4 dB where mass rules from a coil 150 K over the air, as the printed example has it', () => {
    const { hotReOhm, coldReOhm, compressionDb, basis, coilCelsius } = answered(baffle(10), { riseK: 150 });
    expect(hotReOhm / coldReOhm).toBeCloseTo(1.585, 12);
    expect(compressionDb[3]).toBeCloseTo(20 * Math.log10(1.585), 3); // 4.0 dB
    expect(basis).toBe('given-rise');
    expect(coilCelsius).toBe(170);
  });

  it('moves the alignment with the coil: Qts hot from Qes x 1.585', () => {
    const { hot } = answered(baffle(10), { riseK: 150 });
    const { qms, qes } = quince10;
    expect(hot.figures.qts).toBeCloseTo((qms * qes * 1.585) / (qms + qes * 1.585), 12);
    expect(hot.figures.blTm).toBeCloseTo(11.2961, 4); // as cold
  });

  it('stands 150 K over the air at the rated power of the cold coil', () => {
    const { riseK, coilWatts, basis } = answered(baffle(Math.sqrt(quince10.peWatts * quince10.reOhm)));
    expect(riseK).toBeCloseTo(150, 9);
    expect(coilWatts).toBeCloseTo(quince10.peWatts / 1.585, 9);
    expect(basis).toBe('rated-power');
  });

  it('balances heat in and heat out, for any power and resistance', () => {
    const question = fc.record({
      volts: fc.double({ min: 0.01, max: 200, noNaN: true }),
      thermalResistanceKPerW: fc.double({ min: 0.05, max: 20, noNaN: true }),
      averageShare: fc.double({ min: 0.01, max: 1, noNaN: true }),
    });
    fc.assert(
      fc.property(question, ({ volts, ...setting }) => {
        const { riseK, coilWatts, hotReOhm } = answered(baffle(volts), setting);
        const takes = (setting.averageShare * volts ** 2) / hotReOhm;
        expect((coilWatts ?? Number.NaN) / takes).toBeCloseTo(1, 9);
        expect(riseK / (setting.thermalResistanceKPerW * takes)).toBeCloseTo(1, 9);
      }),
    );
  });

  it('shares the power over drivers and coils: four in any wiring warm like one at a quarter of the power', () => {
    const four = { count: 4, seriesPerString: 2, parallelStrings: 2 };
    expect(answered({ ...baffle(20), array: four }).riseK).toBeCloseTo(answered(baffle(10)).riseK, 9);
  });

  it('takes more the harder it is driven', () => {
    const loss = (volts: number) => answered(baffle(volts, medlar12)).compressionDb[2] ?? Number.NaN;
    expect(loss(1)).toBeLessThan(loss(10));
    expect(loss(10)).toBeLessThan(loss(30));
    expect(answered(baffle(5)).isBeyondCoil).toBe(false);
    expect(answered(baffle(80)).isBeyondCoil).toBe(true);
  });

  it('answers in the shape of its schema, and refuses where nothing says how warm it gets', () => {
    expect(hotCoilEstimateSchema.safeParse(answered(baffle(10))).error).toBeUndefined();
    const refused = estimateHotCoil(baffle(10, { ...quince10, peWatts: null }));
    expect(isRefusal(refused) && refused.refusal.field).toBe('thermalResistanceKPerW');
    const cold = estimateHotCoil(baffle(10), { riseK: -3 });
    expect(isRefusal(cold) && cold.refusal.field).toBe('riseK');
  });
});
