// One design worked out: what is missing, what cannot be, or every figure and curve of it. The circuit is solved by the
// acoustics engine; this file brings a person's entries to it and names what comes back.
import {
  arrayResistanceOhm,
  deriveDriver,
  frequencyGrid,
  solveResponse,
  soundVerdict,
} from '@gusset/acoustics';
import type {
  DriverArray,
  DriverParameters,
  ResponseResult,
  SoundFinding,
  SoundSystemInput,
} from '@gusset/contracts/acoustics';
import {
  type Contradiction,
  type DriverFact,
  designOf,
  mostCurrent,
  type SolvedDesign,
  type SoundAmplifierResult,
  type SoundDesign,
  type SoundFacts,
  type SoundInput,
  type SoundPortResult,
  type SoundRadiatorResult,
  type Stretch,
} from '@gusset/contracts/sound';
import { isRefusal, type RefusalDetail, refuse } from '@gusset/units';
import { incomplete, type Missing, ready, refused, type SheetOutcome } from '../sheet-definition.ts';
import { cabinOf, type UsedCabin } from './cabin-of.ts';
import { chambersOf, enclosureOf, missingOfEnclosure, refuseEnclosure } from './enclosure-of.ts';
import { atSheetField } from './engine-fields.ts';
import { portResult } from './port-of.ts';
import { arrayOf, filtersOf, missingOfSignal, type PlacedFilter } from './signal-of.ts';
import { BAND, CURVES, highestInBand, stretchesWhere } from './sound-band.ts';

/** `driver` is the record that the design names; null = none, or it went. */
export function solveDesign(
  design: SoundDesign,
  driver: DriverFact | null,
  used: UsedCabin,
): SheetOutcome<SolvedDesign> {
  const entered = systemOf(design, driver, used);
  if (entered.state !== 'ready') return entered;
  const { system, filters, driver: known } = entered.result;
  const curves = solveResponse(system);
  if (isRefusal(curves)) return refused([atSheetField(curves.refusal, filters)]);
  const findings = soundVerdict(system, curves, BAND);
  if (isRefusal(findings)) return refused([atSheetField(findings.refusal, filters)]);
  return ready(solved(design, known, { ...entered.result, curves, findings }));
}

/** The design that counts as a circuit for the engine's other questions; null while it is not complete. */
export function soundSystem(input: SoundInput, facts: SoundFacts): SoundSystemInput | null {
  const driver = facts.driver?.id === input.driverId ? facts.driver : null;
  const entered = systemOf(designOf(input), driver, cabinOf(input.cabin, facts));
  return entered.state === 'ready' ? entered.result.system : null;
}

type EnteredSystem = KnownDrivers &
  Supply & {
    readonly driver: DriverFact;
    readonly system: SoundSystemInput;
    readonly filters: readonly PlacedFilter[];
  };

function systemOf(
  design: SoundDesign,
  driver: DriverFact | null,
  { cabin }: UsedCabin,
): SheetOutcome<EnteredSystem> {
  const missing = missingOf(design, driver);
  if (missing.length > 0 || driver === null) return incomplete(missing);
  const known = knownDrivers(design, driver);
  if (!('parameters' in known)) return refused([known]);
  const openings = refuseEnclosure(design);
  if (openings.length > 0) return refused(openings);
  const filters = filtersOf(design);
  const supply = supplyOf(design, arrayResistanceOhm(known.parameters, known.array));
  const system: SoundSystemInput = {
    frequenciesHz: frequencyGrid(CURVES),
    source: {
      voltageVrms: supply.driveVolts,
      outputOhm: design.amplifier.outputOhm?.value ?? 0,
      cableOhm: design.amplifier.cableOhm?.value ?? 0,
      maxVoltageVrms: design.amplifier.maxVolts?.value ?? null,
      maxCurrentArms: design.amplifier.maxAmps?.value ?? null,
    },
    filters: filters.map(({ filter }) => filter),
    driver: known.parameters,
    array: known.array,
    enclosure: enclosureOf(design),
    cabin,
  };
  return ready({ ...known, ...supply, driver, system, filters });
}

function missingOf(design: SoundDesign, driver: DriverFact | null): readonly Missing[] {
  return [
    ...(driver === null ? [{ field: 'driverId', what: 'a driver from the catalogue' }] : []),
    ...missingOfEnclosure(design),
    ...(design.drive === null
      ? [{ field: 'drive', what: 'the power that the amplifier gives into this load' }]
      : []),
    ...(design.isobaric !== null && design.isobaric.coupling === null
      ? [{ field: 'isobaric.coupling', what: 'the air between the two drivers' }]
      : []),
    ...missingOfSignal(design),
  ];
}

type KnownDrivers = {
  readonly parameters: DriverParameters;
  readonly contradictions: readonly Contradiction[];
  readonly array: DriverArray;
};

function knownDrivers(design: SoundDesign, driver: DriverFact): KnownDrivers | RefusalDetail {
  const sheet = deriveDriver(driver.figures.dataSheet);
  if (isRefusal(sheet)) {
    const { field, why } = sheet.refusal;
    return { ...sheet.refusal, field: 'driverId', why: `The data sheet of ${driver.name}, ${field}: ${why}` };
  }
  const array = arrayOf(design);
  if (isRefusal(array)) return array.refusal;
  if (sheet.driver.coils === 1 && design.coilWiring !== 'single') {
    const why = `${driver.name} has one coil`;
    return refuse('coilWiring', { allowed: 'single', got: design.coilWiring, why }).refusal;
  }
  return { parameters: sheet.driver, contradictions: sheet.contradictions, array };
}

type Supply = Pick<SolvedDesign, 'driveWatts' | 'driveVolts' | 'rdcOhm'> &
  Pick<SoundAmplifierResult, 'limitedBy'>;

/** The power asked for as a voltage into the load, or the most that the amplifier's rails allow. */
function supplyOf({ drive, amplifier }: SoundDesign, rdcOhm: number): Supply {
  const askedVolts = Math.sqrt((drive?.watts ?? 0) * rdcOhm);
  const maxVolts = amplifier.maxVolts?.value ?? askedVolts;
  return maxVolts < askedVolts
    ? { driveWatts: maxVolts ** 2 / rdcOhm, driveVolts: maxVolts, rdcOhm, limitedBy: 'volts' }
    : { driveWatts: drive?.watts ?? 0, driveVolts: askedVolts, rdcOhm, limitedBy: 'power' };
}

type Answer = KnownDrivers &
  Supply & { readonly curves: ResponseResult; readonly findings: readonly SoundFinding[] };

function solved(design: SoundDesign, driver: DriverFact, answer: Answer): SolvedDesign {
  const { parameters, curves, findings } = answer;
  const { figures } = curves;
  const chambers = chambersOf(design);
  const band = findings.find((finding) => finding.code === 'band');
  const stretches = travelStretches(curves, parameters.xmaxMm);
  const [mostAmps, mostAmpsAtHz] = mostCurrent(curves);
  return {
    driverId: driver.id,
    driverName: driver.name,
    count: design.count,
    isobaric: design.isobaric !== null,
    parameters,
    contradictions: answer.contradictions,
    enclosure: design.enclosure,
    netLitres: chambers.length === 0 ? null : chambers.reduce((sum, { netLitres }) => sum + netLitres, 0),
    chambers,
    ports: portResults(design, curves),
    radiator: radiatorResult(design, curves),
    displacementLitres: parameters.displacementLitres * design.count,
    driveWatts: answer.driveWatts,
    driveVolts: answer.driveVolts,
    amplifier: {
      limitedBy: answer.limitedBy,
      mostAmps,
      mostAmpsAtHz,
      maxAmps: design.amplifier.maxAmps?.value ?? null,
    },
    rdcOhm: answer.rdcOhm,
    qtc: figures.qtcWithLosses,
    fcHz: figures.fcHz,
    f3Hz: figures.f3Hz,
    peakDb: figures.peakDb,
    alpha: figures.alpha,
    tuningHz: figures.tuningHz,
    rearTuningHz: figures.rearTuningHz,
    reachesHz: band?.code === 'band' ? band.lowHz : null,
    reachesToHz: band?.code === 'band' ? band.highHz : null,
    travelBelowHz: stretches[0]?.fromHz === CURVES.lowHz ? stretches[0].toHz : null,
    travelStretches: stretches,
    travelLimitWatts: travelLimitWatts(curves, parameters.xmaxMm, answer.driveWatts),
    loudestDb: highestInBand(curves.frequenciesHz, curves.splDb),
    curves,
    findings,
  };
}

/** Where a cone, of an isobaric pair either, goes beyond what its maker allows. */
function travelStretches(curves: ResponseResult, xmaxMm: number | null): readonly Stretch[] {
  if (xmaxMm === null) return [];
  const { frequenciesHz, excursionMm, innerExcursionMm } = curves;
  return stretchesWhere(
    frequenciesHz,
    (i) => Math.max(excursionMm[i] ?? 0, innerExcursionMm?.[i] ?? 0) > xmaxMm,
  );
}

/** Travel goes with the root of the power: how much power the farthest travel in the band leaves, filters included. */
function travelLimitWatts(curves: ResponseResult, xmaxMm: number | null, driveWatts: number): number | null {
  if (xmaxMm === null) return null;
  const { frequenciesHz, excursionMm, innerExcursionMm } = curves;
  const farthestMm = Math.max(
    highestInBand(frequenciesHz, excursionMm),
    innerExcursionMm === null ? 0 : highestInBand(frequenciesHz, innerExcursionMm),
  );
  return farthestMm > 0 ? driveWatts * (xmaxMm / farthestMm) ** 2 : null;
}

function portResults(design: SoundDesign, curves: ResponseResult): readonly SoundPortResult[] {
  const { frequenciesHz, portSpeedMps, rearPortSpeedMps, figures } = curves;
  const speeds = [portSpeedMps, rearPortSpeedMps];
  return figures.ports.map((port, i) =>
    portResult({
      port: port.role === 'rear-port' ? design.rearPort : design.port,
      figures: port,
      chamber: port.role === 'rear-port' ? 'rear' : port.role === 'front-port' ? 'front' : 'only',
      fastestMps: highestInBand(frequenciesHz, speeds[i] ?? []),
    }),
  );
}

function radiatorResult(
  { enclosure, radiator }: SoundDesign,
  { figures }: ResponseResult,
): SoundRadiatorResult | null {
  if (enclosure !== 'passive-radiator') return null;
  return {
    count: radiator.count,
    sdCm2: radiator.sdCm2?.value ?? 0,
    addedMassGrams: radiator.addedMassGrams?.value ?? 0,
    xmaxMm: radiator.xmaxMm?.value ?? null,
    tuningHz: figures.tuningHz ?? 0,
    notchHz: figures.radiatorNotchHz ?? 0,
  };
}
