import { type SoundFinding, type SoundSystemInput, soundFindingSchema } from '@gusset/contracts/acoustics';
import { isRefusal } from '@gusset/units';
import { describe, expect, it } from 'vitest';
import { TRUTH_CASES } from '../truth/cases.ts';
import { medlar12, quince10 } from '../truth/drivers.ts';
import { solveResponse } from './response.ts';
import { soundVerdict } from './sound-verdict.ts';

const frequenciesHz = Array.from({ length: 200 }, (_, i) => 10 * 50 ** (i / 199));

function findings(
  system: SoundSystemInput,
  setting: Parameters<typeof soundVerdict>[2] = {},
): readonly SoundFinding[] {
  const result = solveResponse(system);
  if (isRefusal(result)) throw new Error(JSON.stringify(result.refusal));
  const found = soundVerdict(system, result, setting);
  if (isRefusal(found)) throw new Error(JSON.stringify(found.refusal));
  return found;
}

const closed = (netLitres: number, voltageVrms = 10): SoundSystemInput => ({
  frequenciesHz,
  source: { voltageVrms },
  driver: quince10,
  enclosure: { kind: 'closed', chamber: { netLitres } },
});
const vented = (diameterMm: number, voltageVrms: number): SoundSystemInput => ({
  frequenciesHz,
  source: { voltageVrms },
  driver: medlar12,
  enclosure: {
    kind: 'vented',
    chamber: { netLitres: 55, ql: 7 },
    port: {
      mouth: { shape: 'round', diameterMm },
      outerEnd: { kind: 'flanged' },
      innerEnd: { kind: 'free' },
      sizing: { by: 'tuning', tuningHz: 31 },
    },
  },
});
const find = (found: readonly SoundFinding[], code: SoundFinding['code']) =>
  found.filter((finding) => finding.code === code);

describe('soundVerdict', () => {
  it.each([
    [400, 'overdamped'],
    [60, 'tight'],
    [30, 'flat'],
    [12, 'lifted'],
    [5, 'peaky'],
  ])('names the damping of %d litres %s', (netLitres, character) => {
    const driver = { ...quince10, qms: 4, qes: 0.5 };
    expect(find(findings({ ...closed(netLitres), driver }), 'damping')).toMatchObject([{ character }]);
  });

  it('finds the lower edge of the band of a flat box at its f3', () => {
    const flat = { ...quince10, qes: 0.5 };
    const system = { ...closed(32), driver: flat };
    const [band] = find(findings(system), 'band');
    expect(band).toMatchObject({ highHz: null });
    const result = solveResponse(system);
    const f3Hz = isRefusal(result) ? null : result.figures.f3Hz;
    // The highest level of a box that hardly peaks is its flat part, to a tenth of a decibel.
    expect(band?.code === 'band' && (band.lowHz ?? 0) / (f3Hz ?? 1)).toBeCloseTo(1, 1);
  });

  it('says over when the cone goes further than its maker allows, and where', () => {
    const [calm] = find(findings(closed(30, 10), { lowHz: 20, highHz: 100 }), 'travel');
    const [wild] = find(findings(closed(30, 30), { lowHz: 20, highHz: 100 }), 'travel');
    expect(calm).toMatchObject({ severity: 'note', part: 'cone', limitMm: 11 });
    expect(wild).toMatchObject({ severity: 'over', part: 'cone' });
    expect(wild?.code === 'travel' && wild.travelMm).toBeGreaterThan(11);
  });

  it('has a power that brings the cone exactly to its limit', () => {
    const [limit] = find(findings(closed(30)), 'travel-limited-power');
    if (limit?.code !== 'travel-limited-power') throw new Error('no travel-limited power');
    const volts = Math.sqrt(limit.watts * quince10.reOhm);
    const [travel] = find(findings(closed(30, volts)), 'travel');
    expect(travel?.code === 'travel' && travel.travelMm).toBeCloseTo(11, 6);
  });

  it('sets the source beside the heat that all coils take', () => {
    expect(find(findings(closed(30, 10)), 'heat')).toMatchObject([
      { severity: 'note', limitVrms: expect.closeTo(Math.sqrt(300 * 3.6), 9) },
    ]);
    expect(find(findings(closed(30, 40)), 'heat')).toMatchObject([{ severity: 'over' }]);
  });

  it('sets volts after the filters and amperes beside what the amplifier has', () => {
    const boost = { kind: 'peaking', centreHz: 40, gainDb: 6, q: 2 } as const;
    const source = { voltageVrms: 10, maxVoltageVrms: 15, maxCurrentArms: 30 };
    const boosted = findings({ ...closed(30), source, filters: [boost], frequenciesHz: [30, 40, 90] });
    expect(find(boosted, 'amplifier-voltage')).toMatchObject([
      {
        severity: 'over',
        voltageVrms: expect.closeTo(10 * 10 ** (6 / 20), 9),
        limitVrms: 15,
        frequencyHz: 40,
      },
    ]);
    const [amps] = find(boosted, 'amplifier-current');
    expect(amps).toMatchObject({ severity: 'note', limitArms: 30 });
    expect(find(findings(closed(30)), 'amplifier-current')).toEqual([]);
    const plain = findings({ ...closed(30), source });
    expect(find(plain, 'amplifier-voltage')).toMatchObject([{ severity: 'note', voltageVrms: 10 }]);
  });

  it.each([
    [160, 5, 'port-quiet'],
    [100, 16, 'port-needs-rounding'],
    [100, 22, 'port-needs-flares'],
    [60, 30, 'port-chuffs'],
  ] as const)('calls a %d mm port at %d V %s', (diameterMm, voltageVrms, code) => {
    expect(find(findings(vented(diameterMm, voltageVrms)), code)).toHaveLength(1);
  });

  it("keeps to the shop's own lines for port air", () => {
    const lines = { quietMps: 60, roundedMps: 70, flaredMps: 80 };
    expect(find(findings(vented(60, 20), lines), 'port-quiet')).toHaveLength(1);
  });

  it('says which port has no length for its tuning', () => {
    const tiny = findings({ ...vented(15, 5) });
    expect(find(tiny, 'port-unbuildable')).toMatchObject([{ severity: 'over', role: 'port' }]);
  });

  it('warns where pipe, box and cone stop being small, only inside the band', () => {
    const wide = findings(vented(100, 10), { highHz: 500, longestInsideMm: 800 });
    expect(wide.map(({ code }) => code)).toEqual(
      expect.arrayContaining(['pipe-resonance', 'box-mode', 'cone-directive']),
    );
    const narrow = findings(vented(100, 10), { highHz: 60, longestInsideMm: 800 });
    expect(narrow.map(({ code }) => code)).not.toEqual(expect.arrayContaining(['box-mode']));
    expect(find(narrow, 'cone-directive')).toEqual([]);
  });

  it('wants radiators that move twice the air of the drivers', () => {
    const radiators = TRUTH_CASES.find(({ id }) => id === 'passive-radiators');
    if (radiators === undefined) throw new Error('no radiator case');
    // 2 x 360 cm² x 16 mm = 1152 cm³ beside 2 x 340 cm² x 11 mm = 748 cm³
    expect(find(findings(radiators.input), 'radiator-air')).toMatchObject([
      { severity: 'note', radiatorCm3: expect.closeTo(1_152, 9), wantedCm3: expect.closeTo(748, 9) },
    ]);
  });

  it.each(TRUTH_CASES)('makes findings of the schema from $id', ({ input }) => {
    const found = findings(input);
    expect(found.length).toBeGreaterThan(3);
    for (const finding of found) expect(soundFindingSchema.safeParse(finding).error).toBeUndefined();
  });

  it('refuses lines that make no sense, by name', () => {
    const system = closed(30);
    const result = solveResponse(system);
    if (isRefusal(result)) throw new Error(result.refusal.why);
    const found = soundVerdict(system, result, { quietMps: -1 });
    expect(isRefusal(found) && found.refusal.field).toBe('quietMps');
  });
});
