// Sheet 03. The circuit is solved by the acoustics engine; this file gathers what a person entered, asks for what is
// missing, and names the figures that others read.
import {
  closedBoxSummary,
  deriveDriver,
  frequencyGrid,
  solveResponse,
  soundVerdict,
} from '@gusset/acoustics';
import type { DriverArray, ResponseResult, SoundSystemInput } from '@gusset/contracts/acoustics';
import type { BriefResult } from '@gusset/contracts/brief';
import {
  FILL_EFFECT,
  type SoundFacts,
  type SoundInput,
  type SoundResult,
  soundInputSchema,
} from '@gusset/contracts/sound';
import { isRefusal, type RefusalDetail, refuse } from '@gusset/units';
import {
  incomplete,
  type KeyFigure,
  type Missing,
  ready,
  refused,
  type SheetDefinition,
  type SheetOutcome,
} from '../sheet-definition.ts';

export type SoundUpstream = { readonly brief?: BriefResult | null };

const CURVE_POINTS = 180;
const LOWEST_HZ = 10;
const HIGHEST_HZ = 500;
/** Where a trunk or boot system plays: the band that verdicts look at. */
const BAND = { lowHz: 20, highHz: 120 };
/** Leak Q of a well-glued closed box (Small: 5 to 20, most often near 7 for large ones; small tight boxes more). */
const LEAK_Q = 15;
/** Where the cabin's rise levels out, as a share of its corner, and its damping: a middling car body, an estimate. */
const CABIN_FLOOR_SHARE = 0.35;
const CABIN_Q = 0.7;
const SPEED_OF_SOUND_MPS = 343.24; // dry air at 20 °C
/** Six figures: more than any ear or meter resolves, and a third of the bytes. */
const KEPT_FIGURES = 6;

export const soundSheet: SheetDefinition<SoundInput, SoundFacts, SoundUpstream, SoundResult> = {
  kind: 'sound',
  engineVersion: 1,
  optionalReads: ['brief'],
  inputSchema: soundInputSchema,
  emptyInput: () => ({
    driverId: null,
    count: 1,
    seriesPerString: 1,
    coilWiring: 'single',
    drive: null,
    targetNet: null,
    fill: 'none',
    cabin: 'estimate',
    notes: '',
  }),
  compute: (input, facts) => computeSound(input, facts),
  keyFigures: (result) => [
    { key: 'driver', label: 'Drivers', value: `${result.count} × ${result.driverName}` },
    { key: 'net', label: 'Net volume wanted', value: `${result.netLitres.toFixed(1)} L` },
    { key: 'power', label: 'Power', value: `${Math.round(result.driveWatts)} W` },
    { key: 'qtc', label: 'System Q', value: result.qtc.toFixed(2) },
    { key: 'f3', label: 'Corner', value: `${result.f3Hz.toFixed(1)} Hz` },
    { key: 'load', label: 'Load', value: `${result.rdcOhm.toFixed(2)} Ω` },
  ],
  factFigures: ({ driver, longestCabinM }) => {
    const cabin: KeyFigure = {
      key: 'cabin',
      label: 'Longest inside length',
      value: longestCabinM === null ? 'not known' : `${longestCabinM} m`,
    };
    if (driver === null) return [cabin];
    const sheet = Object.entries(driver.figures.dataSheet).map(([key, value]) => ({
      key: `driver.${key}`,
      label: `${driver.name} · ${key}`,
      value: value === null ? 'not given' : String(value),
    }));
    return [{ key: 'driver', label: 'Driver', value: driver.name }, ...sheet, cabin];
  },
};

function computeSound(input: SoundInput, facts: SoundFacts): SheetOutcome<SoundResult> {
  const missing: Missing[] = [];
  if (facts.driver === null) missing.push({ field: 'driverId', what: 'a driver from the catalogue' });
  if (input.targetNet === null) missing.push({ field: 'targetNet', what: 'the net volume to aim for' });
  if (input.drive === null)
    missing.push({ field: 'drive', what: 'the power that the amplifier gives into this load' });
  if (facts.driver === null || input.targetNet === null || input.drive === null) return incomplete(missing);

  const sheet = deriveDriver(facts.driver.figures.dataSheet);
  if (isRefusal(sheet)) return refused([atField('driverId', sheet.refusal)]);
  const array = arrayOf(input);
  if (isRefusal(array)) return refused([array.refusal]);
  if (sheet.driver.coils === 1 && input.coilWiring !== 'single') {
    const why = `${facts.driver.name} has one coil`;
    return refused([refuse('coilWiring', { allowed: 'single', got: input.coilWiring, why }).refusal]);
  }
  const netLitres = input.targetNet.litres;
  const summary = closedBoxSummary(sheet.driver, netLitres, {
    array,
    ql: LEAK_Q,
    ...FILL_EFFECT[input.fill],
  });
  if (isRefusal(summary)) return refused([atField('targetNet', summary.refusal)]);

  const rdcOhm = resistanceOf(sheet.driver.reOhm, sheet.driver.coils, input, array);
  const driveVolts = Math.sqrt(input.drive.watts * rdcOhm);
  const cabin =
    input.cabin === 'none' || facts.longestCabinM === null ? null : cabinShelf(facts.longestCabinM);
  const grid = frequencyGrid({ lowHz: LOWEST_HZ, highHz: HIGHEST_HZ, count: CURVE_POINTS });
  if (isRefusal(grid)) return refused([grid.refusal]);
  const system: SoundSystemInput = {
    frequenciesHz: grid,
    source: { voltageVrms: driveVolts },
    driver: sheet.driver,
    array,
    enclosure: { kind: 'closed', chamber: { netLitres, ql: LEAK_Q, ...FILL_EFFECT[input.fill] } },
    cabin,
  };
  const curves = solveResponse(system);
  if (isRefusal(curves)) return refused([curves.refusal]);
  const findings = soundVerdict(system, curves, BAND);
  if (isRefusal(findings)) return refused([findings.refusal]);
  const band = findings.find((finding) => finding.code === 'band');
  return ready({
    driverId: facts.driver.id,
    driverName: facts.driver.name,
    count: input.count,
    parameters: sheet.driver,
    contradictions: sheet.contradictions,
    netLitres,
    displacementLitres: sheet.driver.displacementLitres * input.count,
    driveWatts: input.drive.watts,
    driveVolts,
    rdcOhm,
    qtc: summary.qtcWithLosses,
    fcHz: summary.fcHz,
    f3Hz: summary.f3Hz,
    peakDb: summary.peakDb,
    alpha: summary.alpha,
    reachesHz: band?.code === 'band' ? band.lowHz : null,
    travelBelowHz: travelBelow(curves, sheet.driver.xmaxMm),
    loudestDb: loudestIn(curves),
    cabinLongestM: cabin === null ? null : facts.longestCabinM,
    curves: kept(curves),
    findings,
  });
}

function arrayOf(input: SoundInput): DriverArray | ReturnType<typeof refuse> {
  const { count, seriesPerString, coilWiring } = input;
  if (count % seriesPerString !== 0) {
    const why = `${count} drivers cannot stand in equal strings of ${seriesPerString}`;
    return refuse('seriesPerString', { allowed: `a divisor of ${count}`, got: seriesPerString, why });
  }
  return { count, seriesPerString, parallelStrings: count / seriesPerString, coilWiring, isobaric: null };
}

/** Coils of one driver by `coilWiring`, drivers by strings. */
function resistanceOf(reOhm: number, coils: number, { coilWiring }: SoundInput, array: DriverArray): number {
  const one = coilWiring === 'series' ? reOhm * coils : coilWiring === 'parallel' ? reOhm / coils : reOhm;
  return (one * array.seriesPerString) / array.parallelStrings;
}

/** Rise below c/(2 L), levelling out where the body leaks: an estimate, real cars differ by 5 to 10 dB. */
function cabinShelf(longestM: number) {
  const cornerHz = SPEED_OF_SOUND_MPS / (2 * longestM);
  return {
    kind: 'shelf' as const,
    longestM,
    upperQ: CABIN_Q,
    lowerHz: cornerHz * CABIN_FLOOR_SHARE,
    lowerQ: CABIN_Q,
  };
}

/** The highest frequency at which the cone still goes beyond its travel. */
function travelBelow(curves: ResponseResult, xmaxMm: number | null): number | null {
  if (xmaxMm === null) return null;
  const over = curves.frequenciesHz.filter((_, i) => (curves.excursionMm[i] ?? 0) > xmaxMm);
  return over.length === 0 ? null : Math.max(...over);
}

function loudestIn(curves: ResponseResult): number {
  const inBand = curves.splDb.filter((_, i) => {
    const hz = curves.frequenciesHz[i] ?? 0;
    return hz >= BAND.lowHz && hz <= BAND.highHz;
  });
  return Math.max(...inBand);
}

function kept(curves: ResponseResult): ResponseResult {
  const round = (values: readonly number[]) => values.map((value) => Number(value.toPrecision(KEPT_FIGURES)));
  const roundOrNull = (values: readonly number[] | null) => (values === null ? null : round(values));
  return {
    ...curves,
    frequenciesHz: round(curves.frequenciesHz),
    splDb: round(curves.splDb),
    splFreeDb: round(curves.splFreeDb),
    impedanceOhm: round(curves.impedanceOhm),
    impedancePhaseRad: round(curves.impedancePhaseRad),
    excursionMm: round(curves.excursionMm),
    groupDelayMs: round(curves.groupDelayMs),
    maxSplDb: roundOrNull(curves.maxSplDb),
  };
}

/** An engine names its own field; on this sheet the person finds it here. */
function atField(field: string, refusal: RefusalDetail): RefusalDetail {
  return { ...refusal, field, why: `${refusal.why} (${refusal.field})` };
}
