// Ports for a tuning beside each other: length, speed of the air, air taken, resonance of the pipe, and whether it fits.
// Air speeds are guidance (see `soundVerdict`); R. H. Small, "Vented-Box Loudspeaker Systems", Part II, JAES 21(6), 1973,
// for the least area.
import {
  type Chamber,
  type DesignSystem,
  type Enclosure,
  firstRefusal,
  type LeastPortArea,
  type Port,
  type PortFinding,
  type PortFit,
  type PortMouthCandidate,
  type PortRole,
  type PortRow,
  type PortTable,
  type PortTableInput,
  type PortTableQuestion,
  portTableSchema,
  type ResponseResult,
  type SoundFinding,
} from '@gusset/contracts/acoustics';
import { isRefusal, type Refusal, refuse } from '@gusset/units';
import { airAt } from '../air.ts';
import { frequencyGrid } from '../frequency-grid.ts';
import { solveResponse } from '../response.ts';
import { soundVerdict } from '../sound-verdict.ts';
import { inSystem } from './design-system.ts';
import { openAreaM2, outsideMm, type PortLength, portLength, portOf } from './port-length.ts';
import { fitPort } from './port-room.ts';

const SPEED_POINTS = 96; // over the band: the speed is a broad hump round the tuning
const MOST_ROUND = 4; // round ports alike that the least area is spelt out for
const LONGEST_PORT_MM = 5_000; // as the schema of a port
const SMALL_AREA_FACTOR = 0.8; // s/m: Small's S >= 0.8 fb Vd

/** One row for each mouth, in the order asked, and the least open area. Refused where the box has no such port. */
export function portTable(input: PortTableInput): PortTable | Refusal {
  const parsed = portTableSchema.safeParse(input);
  if (!parsed.success) return firstRefusal(parsed.error, input);
  const question = parsed.data;
  const vent = ventOf(question.system.enclosure, question.role);
  if (vent === null) {
    return refuse('role', {
      allowed: 'the role of a port that this kind of box has',
      got: question.role,
      why: `a box of the kind ${question.system.enclosure.kind} has no such port`,
    });
  }
  const leastArea = leastPortArea(question, vent);
  if (isRefusal(leastArea)) return leastArea;
  const rows: PortRow[] = [];
  for (const mouth of question.mouths) {
    const row = portRow(question, mouth, vent);
    if (isRefusal(row)) return row;
    rows.push(row);
  }
  return { rows, leastArea };
}

type Vent = { readonly chamber: Chamber; readonly port: Port };

function ventOf(enclosure: Enclosure, role: PortRole): Vent | null {
  if (enclosure.kind === 'vented') return role === 'port' ? enclosure : null;
  if (role === 'front-port' && 'frontPort' in enclosure) {
    return { chamber: enclosure.front, port: enclosure.frontPort };
  }
  return role === 'rear-port' && enclosure.kind === 'dual-tuned-bandpass'
    ? { chamber: enclosure.rear, port: enclosure.rearPort }
    : null;
}

function portRow(question: PortTableQuestion, mouth: PortMouthCandidate, vent: Vent): PortRow | Refusal {
  const openAreaCm2 = openAreaM2(mouth) * 1e4;
  const found = portLength({
    mouth,
    tuningHz: question.tuningHz,
    litres: question.air.litres,
    takesAir: question.air.by === 'before-port',
    fillFactor: vent.chamber.fillFactor,
    panelMm: question.panelMm,
    air: airAt(question.system.air),
  });
  if (found.kind !== 'length') return { mouth, openAreaCm2, built: null, findings: [cannotBe(found)] };
  const thickMm = outsideMm(mouth).heightMm;
  const { fit, longestMm } = fitPort({
    insideMm: Math.max(0, found.lengthMm - question.panelMm),
    thickMm,
    mouthMm: mouth.shape === 'round' ? mouth.diameterMm : Math.min(mouth.widthMm, mouth.heightMm),
    room: question.room,
  });
  if (found.lengthMm > LONGEST_PORT_MM) {
    const roomMm = longestMm ?? LONGEST_PORT_MM;
    return { mouth, openAreaCm2, built: null, findings: [{ code: 'too-long', severity: 'over', roomMm }] };
  }
  const port = { ...portOf(mouth, found.lengthMm), qp: vent.port.qp };
  const heard = heardThrough(question, port, found.netLitres);
  if (isRefusal(heard)) return heard;
  const { lengthMm, effectiveLengthMm, netLitres, displacedLitres } = found;
  return {
    mouth,
    openAreaCm2,
    built: {
      port,
      netLitres,
      lengthMm,
      effectiveLengthMm,
      displacedLitres,
      peakSpeedMps: heard.fastest.speedMps,
      peakSpeedHz: heard.fastest.frequencyHz,
      pipeResonanceHz: (airAt(question.system.air).soundSpeedMps * 1e3) / (2 * effectiveLengthMm),
      fit,
    },
    findings: [...heard.findings, ...roomFindings(fit, longestMm)],
  };
}

function cannotBe(found: Exclude<PortLength, { kind: 'length' }>): PortFinding {
  return found.kind === 'mouth-too-small'
    ? { code: found.kind, severity: 'over', highestTuningHz: found.highestTuningHz }
    : { code: found.kind, severity: 'over', lowestTuningHz: found.lowestTuningHz };
}

function roomFindings(fit: PortFit, longestMm: number | null): PortFinding[] {
  if (fit === 'no' && longestMm !== null) return [{ code: 'too-long', severity: 'over', roomMm: longestMm }];
  if (fit === 'one-bend') return [{ code: 'needs-bends', severity: 'caution', bends: 1 }];
  return fit === 'two-bends' ? [{ code: 'needs-bends', severity: 'caution', bends: 2 }] : [];
}

type Fastest = { readonly speedMps: number; readonly frequencyHz: number };

/** The system with this port in its place, over the band of the shop's lines. */
function heardThrough(question: PortTableQuestion, port: Port, netLitres: number) {
  const { role, lines } = question;
  const system = {
    ...question.system,
    enclosure: withPort(question.system, role, port, netLitres),
    frequenciesHz: frequencyGrid({ lowHz: lines.lowHz, highHz: lines.highHz, count: SPEED_POINTS }),
  };
  const result = solveResponse(system);
  if (isRefusal(result)) return inSystem(result);
  const findings = soundVerdict(system, result, lines);
  if (isRefusal(findings)) return findings;
  return {
    fastest: fastestAir(result, role),
    findings: findings.filter(isAboutAir).filter((finding) => finding.role === role),
  };
}

const AIR_CODES = [
  'port-quiet',
  'port-needs-rounding',
  'port-needs-flares',
  'port-chuffs',
  'pipe-resonance',
] as const;
type AirFinding = Extract<SoundFinding, { readonly code: (typeof AIR_CODES)[number] }>;

function isAboutAir(finding: SoundFinding): finding is AirFinding {
  return AIR_CODES.some((code) => code === finding.code);
}

function fastestAir(result: ResponseResult, role: PortRole): Fastest {
  const curve = (role === 'rear-port' ? result.rearPortSpeedMps : result.portSpeedMps) ?? [];
  return curve
    .map((speedMps, i) => ({ speedMps, frequencyHz: result.frequenciesHz[i] ?? 0 }))
    .reduce((most, next) => (next.speedMps > most.speedMps ? next : most), { speedMps: 0, frequencyHz: 0 });
}

function withPort(system: DesignSystem, role: PortRole, port: Port, netLitres: number): Enclosure {
  const { enclosure } = system;
  if (enclosure.kind === 'vented')
    return { ...enclosure, port, chamber: { ...enclosure.chamber, netLitres } };
  if (enclosure.kind === 'dual-tuned-bandpass' && role === 'rear-port') {
    return { ...enclosure, rearPort: port, rear: { ...enclosure.rear, netLitres } };
  }
  return 'frontPort' in enclosure
    ? { ...enclosure, frontPort: port, front: { ...enclosure.front, netLitres } }
    : enclosure;
}

/** From one mouth to all: a tuning fixes the mass of the air, so the flow is the same through any of them. */
function leastPortArea(question: PortTableQuestion, vent: Vent): LeastPortArea | Refusal {
  const { system, tuningHz, air, mostMps } = question;
  const mouth: PortMouthCandidate = {
    shape: 'round',
    diameterMm: 100,
    wallMm: 0,
    count: 1,
    outerFlareMm: 0,
    innerFlareMm: 0,
  };
  const port: Port = { ...portOf(mouth, 1), sizing: { by: 'tuning', tuningHz }, qp: vent.port.qp };
  const heard = heardThrough(question, port, air.litres);
  if (isRefusal(heard)) return heard;
  const areaM2 = (openAreaM2(mouth) * heard.fastest.speedMps) / mostMps;
  const { driver, array } = system;
  const front = array.isobaric === null ? array.count : 1;
  const swept = driver.xmaxMm === null ? null : (front * driver.sdCm2 * driver.xmaxMm) / 1e7; // Vd, m³
  return {
    areaCm2: areaM2 * 1e4,
    diametersMm: Array.from({ length: MOST_ROUND }, (_, i) => ({
      count: i + 1,
      diameterMm: Math.sqrt((4 * areaM2) / (i + 1) / Math.PI) * 1e3,
    })),
    bySmallCm2: swept === null ? null : SMALL_AREA_FACTOR * tuningHz * swept * 1e4,
    frequencyHz: heard.fastest.frequencyHz,
  };
}
