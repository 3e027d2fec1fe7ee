// Sentences for what the engine found: the verdict first, then the number, then how sure we are.
import type { PortRole, SoundFinding } from '@gusset/contracts/acoustics';
import type { SoundResult, Stretch } from '@gusset/contracts/sound';

const whole = (value: number): string => String(Math.round(value));
const one = (value: number): string => value.toFixed(1);

const PORT_NAMES: Readonly<Record<PortRole, string>> = {
  port: 'port',
  'front-port': 'front port',
  'rear-port': 'rear port',
};

export type SoundHeadline = {
  readonly tone: 'pass' | 'check' | 'fail';
  readonly words: string;
  readonly detail: string;
};

/** How deep it reaches and what gives out first; something that cannot be built comes before both. */
export function soundHeadline(result: SoundResult): SoundHeadline {
  const detail = `${capital(travelWords(result))}.${targetWords(result)}`;
  const stuck = result.ports.find(({ buildable }) => !buildable);
  if (stuck !== undefined) {
    return {
      tone: 'fail',
      words: `The ${PORT_NAMES[stuck.role]} cannot be built`,
      detail: `${portStuckWords(stuck.tuningHz, stuck.lengthMm)} ${reachWords(result)}. ${detail}`,
    };
  }
  const needsCare =
    result.findings.some(({ severity }) => severity !== 'note') ||
    isAmplifierShort(result) ||
    (result.target?.outside.length ?? 0) > 0;
  return { tone: needsCare ? 'check' : 'pass', words: reachWords(result), detail };
}

const isAmplifierShort = ({ amplifier }: SoundResult): boolean =>
  amplifier.limitedBy === 'volts' || (amplifier.maxAmps !== null && amplifier.mostAmps > amplifier.maxAmps);

const capital = (words: string): string => words.charAt(0).toUpperCase() + words.slice(1);

function reachWords({ reachesHz, reachesToHz, cabin, curves, enclosure }: SoundResult): string {
  const where = cabin === 'none' ? 'outdoors' : 'in this car';
  const lowest = curves.frequenciesHz[0] ?? 10;
  if (enclosure.endsWith('bandpass') && reachesToHz !== null) {
    return reachesHz === null
      ? `Plays up to ${whole(reachesToHz)} Hz ${where}`
      : `Plays ${whole(reachesHz)} to ${whole(reachesToHz)} Hz ${where}`;
  }
  return reachesHz === null
    ? `Plays below ${whole(lowest)} Hz ${where}`
    : `Reaches ${whole(reachesHz)} Hz ${where}`;
}

/** Where the cone runs out of travel, and from which power on. */
export function travelWords(result: SoundResult): string {
  const { travelStretches, travelLimitWatts, parameters, curves } = result;
  if (parameters.xmaxMm === null) return 'the maker states no cone travel, so its end is not known';
  const watts = whole(result.driveWatts);
  if (travelStretches.length === 0) return `the cone stays within its travel at ${watts} W`;
  const where = travelStretches.map((stretch) => stretchWords(stretch, curves.frequenciesHz[0] ?? 0));
  const above =
    travelLimitWatts !== null && travelLimitWatts < result.driveWatts
      ? `above ${whole(travelLimitWatts)} W`
      : `at ${watts} W`;
  return `runs out of cone travel ${where.join(' and ')} ${above}`;
}

function stretchWords({ fromHz, toHz }: Stretch, lowestHz: number): string {
  if (fromHz <= lowestHz) return `below ${whole(toHz)} Hz`;
  return whole(fromHz) === whole(toHz)
    ? `at ${whole(toHz)} Hz`
    : `from ${whole(fromHz)} to ${whole(toHz)} Hz`;
}

function targetWords({ target }: SoundResult): string {
  if (target === null) return '';
  const band = `${whole(target.lowHz)} to ${whole(target.highHz)} Hz`;
  const within = `±${target.plusMinusDb} dB`;
  if (target.outside.length === 0) return ` Stays within ${within} from ${band}.`;
  const where = target.outside.map(({ fromHz, toHz }) => stretchWords({ fromHz, toHz }, 0)).join(', ');
  return ` Leaves the target of ${within}, ${band}, ${where}.`;
}

function portStuckWords(tuningHz: number, lengthMm: number): string {
  return `For ${one(tuningHz)} Hz this opening would need ${whole(lengthMm).replace('-', '−')} mm of port: take a larger opening, or tune lower.`;
}

const DAMPING_WORDS: Readonly<Record<Extract<SoundFinding, { code: 'damping' }>['character'], string>> = {
  overdamped: 'Very tight, little low bass of its own',
  tight: 'Tight, shortest ringing',
  flat: 'Flattest level',
  lifted: 'Fuller, a slight lift above the corner',
  peaky: 'Boomy: a clear hump above the corner',
};

const PART_WORDS = { cone: 'Cone', 'inner-cone': 'Inner cone', radiator: 'Radiator' } as const;

/** The findings that a person can act on, each one line; null = said in the headline or not worth a line. */
export function findingWords(finding: SoundFinding): string | null {
  switch (finding.code) {
    case 'band':
    case 'travel-limited-power':
      return null;
    case 'damping':
      return `${DAMPING_WORDS[finding.character]} (system Q ${finding.qtcWithLosses.toFixed(2)}${finding.peakDb > 0.1 ? `, +${one(finding.peakDb)} dB` : ''})`;
    case 'travel':
      return finding.severity === 'over'
        ? `${PART_WORDS[finding.part]} would travel ${one(finding.travelMm)} mm at ${whole(finding.frequencyHz)} Hz, the maker allows ${one(finding.limitMm)}`
        : `${PART_WORDS[finding.part]} travels ${one(finding.travelMm)} of ${one(finding.limitMm)} mm at ${whole(finding.frequencyHz)} Hz`;
    case 'heat':
      return finding.severity === 'over'
        ? `More power than the coils are rated for: ${one(finding.voltageVrms)} V, the rating allows ${one(finding.limitVrms)}`
        : null;
    case 'lowest-load':
      return `Lowest load ${one(finding.ohm)} Ω at ${whole(finding.frequencyHz)} Hz`;
    case 'radiator-air':
      return finding.severity === 'note'
        ? null
        : `The radiators move ${whole(finding.radiatorCm3)} cm³ of air; twice the drivers’ would be ${whole(finding.wantedCm3)}`;
    case 'loudest':
      return `At least ${whole(finding.splDb)} dB anywhere in the low band before a limit is met`;
    default:
      return portWordsOf(finding) ?? modelWords(finding);
  }
}

function portWordsOf(finding: SoundFinding): string | null {
  switch (finding.code) {
    case 'port-quiet':
      return `Air in the ${PORT_NAMES[finding.role]} ${one(finding.speedMps)} m/s at most: quiet`;
    case 'port-needs-rounding':
      return `Air in the ${PORT_NAMES[finding.role]} reaches ${one(finding.speedMps)} m/s at ${whole(finding.frequencyHz)} Hz: round both ends over`;
    case 'port-needs-flares':
      return `Air in the ${PORT_NAMES[finding.role]} reaches ${one(finding.speedMps)} m/s at ${whole(finding.frequencyHz)} Hz: flare both ends`;
    case 'port-chuffs':
      return `Air in the ${PORT_NAMES[finding.role]} reaches ${one(finding.speedMps)} m/s at ${whole(finding.frequencyHz)} Hz: it will be heard; give it a larger opening`;
    case 'port-unbuildable':
      return portStuckWords(finding.tuningHz, finding.lengthMm);
    default:
      return null;
  }
}

/** Where the figures stop being good. */
function modelWords(finding: SoundFinding): string | null {
  switch (finding.code) {
    case 'pipe-resonance':
      return `The ${PORT_NAMES[finding.role]} rings at ${whole(finding.frequencyHz)} Hz; its figures hold to about ${whole(finding.modelHoldsToHz)}`;
    case 'box-mode':
      return `The box rings at ${whole(finding.frequencyHz)} Hz; the figures hold to about ${whole(finding.modelHoldsToHz)}`;
    case 'cone-directive':
      return `From ${whole(finding.frequencyHz)} Hz up the cone beams; beside it is softer`;
    default:
      return null;
  }
}

/** What the amplifier has to say to it; null = nothing. */
export function amplifierWords({ amplifier, driveWatts, driveVolts }: SoundResult): string | null {
  const { limitedBy, mostAmps, mostAmpsAtHz, maxAmps } = amplifier;
  const amps = `${one(mostAmps)} A at ${whole(mostAmpsAtHz)} Hz`;
  if (maxAmps !== null && mostAmps > maxAmps) {
    return `Asks the amplifier for ${amps}; it gives ${one(maxAmps)}`;
  }
  return limitedBy === 'volts'
    ? `The amplifier stops at ${one(driveVolts)} V: ${whole(driveWatts)} W into this load`
    : null;
}
