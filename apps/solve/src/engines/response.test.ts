import { isRefusal } from '@gusset/units';
import { describe, expect, it } from 'vitest';
import { engine } from './response.ts';

const OPTIONS = { seconds: 1, seed: 1 };
const chamber = { volume_L: 55, QL: 7 };
const port = {
  shape: 'round',
  diameter_mm: 100,
  count: 1,
  ends: [{ type: 'flanged' }, { type: 'free' }],
  tuning_Hz: 31,
};
const pr = { count: 2, fs_Hz: 24, Qms: 9, Vas_L: 60, Sd_cm2: 520, addedMass_g: 90, Xmax_mm: 16 };
const request = {
  id: 'x',
  frequencies_Hz: [20, 31, 50],
  air: { temperature_C: 20, pressure_Pa: 101_325 },
  source: { voltage_Vrms: 20, Rg_ohm: 0, Rcable_ohm: 0 },
  filters: [],
  driver: {
    name: 'Medlar-12',
    fs_Hz: 27,
    Qms: 6,
    Qes: 0.42,
    Vas_L: 70,
    Sd_cm2: 500,
    Re_ohm: 3.4,
    Le_mH: 1.5,
    coils: 1,
    Xmax_mm: 14,
    Pe_W: 500,
    displacement_L: 3,
  },
  array: { count: 1, seriesPerString: 1, parallelStrings: 1, coilWiring: 'single', isobaric: null },
  enclosure: { type: 'vented', chamber, port },
  cabin: null,
  distance_m: 1,
};

async function answerTo(change: object) {
  const answer = await engine.solve(engine.inputSchema.parse({ ...request, ...change }), OPTIONS);
  if (isRefusal(answer)) throw new Error(JSON.stringify(answer.refusal));
  return engine.outputSchema.parse(answer);
}

async function refusalOf(change: object) {
  const answer = await engine.solve(engine.inputSchema.parse({ ...request, ...change }), OPTIONS);
  return isRefusal(answer) ? answer.refusal : null;
}

describe('response', () => {
  it('gives the worked vented box in the public names', async () => {
    const answer = await answerTo({});
    expect(answer.spl_dB).toEqual([93.417, 105.743, 108.811].map((db) => expect.closeTo(db, 3)));
    expect(answer.impedance_phase_deg).toEqual([-46.14, 3.32, -28.32].map((deg) => expect.closeTo(deg, 2)));
    expect(answer.port_velocity_mps).toEqual([16.84, 18.69, 6.34].map((mps) => expect.closeTo(mps, 2)));
    expect(answer.derived).toMatchObject({
      Mms_g: expect.closeTo(176.04, 2),
      BL_per_coil: expect.closeTo(15.548, 3),
      alpha: expect.closeTo(1.2727, 4),
      fb_Hz: 31,
      port_length_mm: expect.closeTo(370.33, 2),
    });
    expect(answer.derived).not.toHaveProperty('Qtc');
    expect(answer).not.toHaveProperty('pr_excursion_mm');
  });

  it.each([
    ['infinite_baffle', { type: 'infinite_baffle' }, []],
    ['sealed', { type: 'sealed', chamber }, []],
    ['passive_radiator', { type: 'passive_radiator', chamber, pr }, ['pr_excursion_mm']],
    [
      'bandpass4',
      { type: 'bandpass4', rear: chamber, front: chamber, frontPort: port },
      ['port_velocity_mps'],
    ],
    [
      'bandpass6',
      {
        type: 'bandpass6',
        rear: chamber,
        rearPort: port,
        front: chamber,
        frontPort: { ...port, tuning_Hz: 60 },
      },
      ['port_velocity_mps', 'port_rear_velocity_mps'],
    ],
  ])('answers %s with the curves that it has', async (_, enclosure, curves) => {
    const answer = await answerTo({ enclosure });
    const optional = ['port_velocity_mps', 'port_rear_velocity_mps', 'pr_excursion_mm', 'excursion_inner_mm'];
    expect(optional.filter((name) => name in answer)).toEqual(curves);
    expect(answer.spl_dB).toHaveLength(3);
  });

  it('answers an isobaric pair with both cones', async () => {
    const array = { ...request.array, count: 2, parallelStrings: 2, isobaric: { couplingVolume_L: 5.5 } };
    const answer = await answerTo({ array });
    expect(answer.excursion_inner_mm).toHaveLength(3);
  });

  it('takes filters, which a cut at 50 Hz and a corner at 31 Hz show', async () => {
    const plain = await answerTo({});
    const cut = await answerTo({ filters: [{ kind: 'peaking', f_Hz: 50, gain_dB: -4, Q: 2 }] });
    expect((cut.spl_dB[2] ?? 0) - (plain.spl_dB[2] ?? 0)).toBeCloseTo(-4, 9);
    const corner = { kind: 'highpass', alignment: 'linkwitz-riley', order: 4, f_Hz: 31 };
    const passed = await answerTo({ filters: [corner] });
    expect((plain.excursion_mm[1] ?? 0) / (passed.excursion_mm[1] ?? 0)).toBeCloseTo(2, 9);
  });

  it('takes either cabin', async () => {
    const plain = await answerTo({});
    const curve = [
      [20, 9],
      [50, 0],
    ];
    const heard = await answerTo({ cabin: { curve } });
    expect((heard.spl_dB[0] ?? 0) - (plain.spl_dB[0] ?? 0)).toBeCloseTo(9, 9);
    const shelf = await answerTo({ cabin: { Lmax_m: 2.6, Qc: 0.7, flow_Hz: 12, Qlow: 0.7 } });
    expect(shelf.spl_dB[0]).toBeGreaterThan((plain.spl_dB[0] ?? 0) + 6);
  });

  it('adds phase, current, power and the levels of other drives', async () => {
    const answer = await answerTo({ source: { ...request.source, max_Vrms: 30 } });
    const [volts, ohm] = [20, answer.impedance_ohm[1] ?? Number.NaN];
    expect(answer.current_Arms?.[1]).toBeCloseTo(volts / ohm, 9);
    expect(answer.apparent_power_VA?.[1]).toBeCloseTo(volts ** 2 / ohm, 9);
    const angle = ((answer.impedance_phase_deg[1] ?? Number.NaN) * Math.PI) / 180;
    expect(answer.power_W?.[1]).toBeCloseTo((volts ** 2 / ohm) * Math.cos(angle), 9);
    expect(answer.phase_deg).toHaveLength(3);
    const above = (curve: readonly number[] | undefined) =>
      (curve?.[1] ?? Number.NaN) - (answer.spl_dB[1] ?? 0);
    expect(above(answer.spl_1W_dB)).toBeCloseTo(10 * Math.log10(3.4 / volts ** 2), 9);
    expect(above(answer.spl_full_power_dB)).toBeCloseTo(20 * Math.log10(30 / volts), 9);
    expect(answer.max_spl_limit).toContain('amplifier-voltage');
  });

  it('follows a step and warms the coils where it is asked to', async () => {
    const plain = await answerTo({});
    expect(plain).not.toHaveProperty('step');
    expect(plain).not.toHaveProperty('hot_coil');
    const { step, hot_coil } = await answerTo({ step: { duration_ms: 100 }, hot_coil: { rise_K: 100 } });
    expect(step?.settled).toBe(true);
    expect(step?.t_ms.at(-1)).toBeGreaterThanOrEqual(100);
    expect(step?.pressure_Pa).toHaveLength(step?.t_ms.length ?? 0);
    expect(hot_coil).toMatchObject({
      basis: 'given-rise',
      coil_C: 120,
      Re_ohm: expect.closeTo(3.4 * 1.39, 12),
    });
    for (const [i, db] of (hot_coil?.compression_dB ?? []).entries()) {
      expect(db).toBeCloseTo((plain.spl_dB[i] ?? 0) - (hot_coil?.spl_dB[i] ?? 0), 9);
    }
    const { Pe_W: _, ...unrated } = request.driver;
    expect(await refusalOf({ driver: unrated, hot_coil: {} })).toMatchObject({
      field: 'hot_coil.Rth_K_per_W',
    });
  });

  it('names a port that cannot be built', async () => {
    const tiny = { ...port, diameter_mm: 20 };
    const answer = await answerTo({ enclosure: { type: 'vented', chamber: { volume_L: 200 }, port: tiny } });
    expect(answer.derived.unbuildable_ports).toEqual(['port']);
    expect(answer.derived.port_length_mm).toBeLessThan(0);
  });

  it('refuses in the words of the document', async () => {
    const cabin = { Lmax_m: 2, Qc: 0.7, flow_Hz: 90, Qlow: 0.7 };
    expect(await refusalOf({ cabin })).toMatchObject({ field: 'cabin.flow_Hz', got: 90 });
    const { tuning_Hz: _, ...open } = port;
    const flared = [{ type: 'flanged', flareRadius_mm: 60 }, { type: 'free' }];
    const short = { ...open, ends: flared, length_mm: 50 };
    expect(await refusalOf({ enclosure: { type: 'vented', chamber, port: short } })).toMatchObject({
      field: 'enclosure.port.length_mm',
      got: 50,
    });
    const slot = { shape: 'rect', width_mm: 300, height_mm: 40, ends: flared, tuning_Hz: 31 };
    expect(await refusalOf({ enclosure: { type: 'vented', chamber, port: slot } })).toMatchObject({
      field: 'enclosure.port.shape',
      got: 'rect',
    });
  });
});
