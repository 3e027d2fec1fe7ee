// Sentences for what the engines found: the verdict first, then the number, then how sure we are.
import type { BoxNote, BoxPlace, BoxSheetResult } from '@gusset/contracts/box';
import type { SurfaceClearance } from '@gusset/contracts/cargo';
import { BOX_FINDING_LEVELS, type BoxFinding, type Deduction } from '@gusset/contracts/enclosure';
import { SHEETS, type SheetKind } from '@gusset/contracts/sheet';

/** Writes a length in the shop's units, with the unit. */
export type LengthWords = (mm: number) => string;

/** What the headlines read of a result. */
export type JudgedBox = Pick<BoxSheetResult, 'place' | 'notes'> & {
  readonly box: Pick<BoxSheetResult['box'], 'findings'>;
};

export type Headline = {
  readonly tone: 'pass' | 'check' | 'fail' | 'note';
  readonly words: string;
  readonly lines: readonly string[];
};

/** Can it be built, and does it stand in its place? */
export function boxHeadline(result: JudgedBox, length: LengthWords): Headline {
  const stops = result.box.findings.filter((finding) => BOX_FINDING_LEVELS[finding.code] === 'stop');
  if (stops.length > 0) {
    return {
      tone: 'fail',
      words: 'It cannot be built so',
      lines: stops.map((finding) => findingWords(finding, length)),
    };
  }
  const { place } = result;
  if (place === null) {
    const reason = result.notes.find(({ code }) => code === 'no-place' || code === 'no-survey');
    const lines = reason === undefined ? [] : [noteWords(reason, length)];
    return { tone: 'check', words: 'It can be built; nothing is known of the car', lines };
  }
  return placeHeadline(place, length);
}

function placeHeadline({ placement }: BoxPlace, length: LengthWords): Headline {
  if (placement.outsideSection) {
    return { tone: 'fail', words: 'It stands outside the measured space', lines: [] };
  }
  if (!placement.fits) {
    return {
      tone: 'fail',
      words: 'It does not stand in its place',
      lines: placement.overlapping.map(
        ({ surface, byMm }) => `${length(byMm)} too far at ${lower(surface.name)}.`,
      ),
    };
  }
  const tightest = placement.clearances.find(({ rests }) => !rests);
  const lines = tightest === undefined ? [] : [clearanceWords(tightest, length)];
  if (!placement.fitsAtWorst) {
    return { tone: 'check', words: 'It fits as measured, but not with every ± against it', lines };
  }
  const isTight = placement.clearances.some(({ verdict, rests }) => !rests && verdict !== 'clear');
  return isTight
    ? { tone: 'check', words: 'It stands in its place, closer than the shop wants', lines }
    : { tone: 'pass', words: 'It stands in its place', lines };
}

export function clearanceWords(
  { clearanceMm, worstCaseMm, wantedMm, surface }: SurfaceClearance,
  length: LengthWords,
): string {
  return `Tightest at ${lower(surface.name)}: ${length(clearanceMm)}, at worst ${length(worstCaseMm)}; wanted ${length(wantedMm)}.`;
}

/** Straight out through the opening. Every answer says what was not looked at. */
export function openingHeadline({ opening }: BoxPlace, length: LengthWords): Headline {
  const spare = `Spare in height ${length(opening.heightSpareMm)}, in width ${length(opening.widthSpareMm)}; wanted ${length(opening.wantedSpareMm)}.`;
  const lines = [
    spare,
    'Only the straight way was looked at; turning it on the way in is not considered here, but under In and out.',
  ];
  switch (opening.verdict) {
    case 'passes':
      return { tone: 'pass', words: 'Held square, it passes the opening', lines };
    case 'does-not-pass':
      return { tone: 'fail', words: 'Held square, it does not pass the opening', lines };
    case 'too-close':
      return {
        tone: 'check',
        words: 'Too close to say at the opening: try a card panel',
        lines,
      };
  }
}

/** Which of the sheets it reads may still change under it. */
export function draftHeadline(drafts: readonly SheetKind[]): Headline {
  const names = drafts.map((kind) => `${SHEETS[kind].number} ${SHEETS[kind].title}`).join(' and ');
  const lines = drafts.includes('sound') ? ['Issue 03 Sound before this sheet.'] : [];
  return { tone: 'note', words: `Drawn from a draft of ${names}`, lines };
}

/** Two people, a hoist, or the driver after the box. */
export function liftHeadline({ box }: Pick<JudgedBox, 'box'>): Headline | null {
  const lift = box.findings.find((finding) => finding.code === 'two-person-lift');
  if (lift?.code !== 'two-person-lift') return null;
  const lines = [
    lift.emptyIsHeavy
      ? `The empty box alone is ${kg(lift.emptyKg)}.`
      : `Or fit the drivers once the box is in: empty it is ${kg(lift.emptyKg)}.`,
  ];
  const words = lift.hoist
    ? `${kg(lift.withDriversKg)} with its drivers: use a lift`
    : `${kg(lift.withDriversKg)} with its drivers: two people`;
  return { tone: 'check', words, lines };
}

/** Findings that a headline has not said already. */
export function otherFindings({ box, place, notes }: JudgedBox): {
  readonly findings: readonly BoxFinding[];
  readonly notes: readonly BoxNote[];
} {
  return {
    findings: box.findings.filter(
      ({ code }) => BOX_FINDING_LEVELS[code] !== 'stop' && code !== 'two-person-lift',
    ),
    notes: notes.filter(
      ({ code }) =>
        // said by verdicts of their own
        code !== 'thickness-nominal' && (place !== null || (code !== 'no-place' && code !== 'no-survey')),
    ),
  };
}

export function noteWords(note: BoxNote, length: LengthWords): string {
  switch (note.code) {
    case 'no-survey':
      return 'No survey is on sheet 02 yet, so where it stands and whether it goes in is not known.';
    case 'no-place':
      return `It cannot be put where it was asked to stand: ${note.why}.`;
    case 'thickness-nominal':
      return `${note.name} is taken as thick as it is sold. Measure the real sheet; until then this is a draft.`;
    case 'driver-figure-assumed':
      return note.figure === 'magnet'
        ? `The driver's magnet is not stated: taken ${length(note.mm)} wide, as large as goes through the cut-out.`
        : 'The thickness of the driver’s flange is not stated: a recess cannot be trusted.';
    case 'payload-over':
      return `The box is ${kg(note.boxKg)}; the car may carry ${kg(note.payloadKg)}, people and cargo together.`;
  }
}

export function findingWords(finding: BoxFinding, length: LengthWords): string {
  switch (finding.code) {
    case 'driver-meets-wall':
      return `The ${finding.part} of driver ${finding.driver} meets the ${finding.face} by ${length(finding.byMm)}.`;
    case 'magnet-room-short':
      return `Behind the magnet of driver ${finding.driver} there are ${length(finding.roomMm)}; it needs ${length(finding.neededMm)}${finding.vented ? ' for its vent' : ''}.`;
    case 'side-vent-room-short':
      return `Beside the vents of driver ${finding.driver} there are ${length(finding.roomMm)}; they need ${length(finding.neededMm)}.`;
    case 'driver-larger-than-baffle':
      return `The ${finding.measure} needs ${length(finding.neededMm)} ${finding.direction}; the baffle has ${length(finding.haveMm)}: ${length(finding.byMm)} too little.`;
    case 'magnet-larger-than-cutout':
      return `The magnet is ${length(finding.byMm)} wider than the cut-out: it does not go in from the front.`;
    case 'driver-near-edge':
      return `Driver ${finding.driver} stands ${length(finding.distanceMm)} from the ${finding.edge} edge; ${length(finding.neededMm)} are wanted.`;
    case 'drivers-close':
      return `Drivers ${finding.drivers.join(' and ')} stand ${length(finding.gapMm)} apart; ${length(finding.neededMm)} are wanted.`;
    case 'recess-thin':
      return `The recess leaves ${length(finding.leftMm)} of wood; ${length(finding.neededMm)} are wanted. A doubler helps.`;
    case 'fixing-at-cutout':
      return `Between bolt circle and cut-out there are ${length(finding.roomMm)}; the ${finding.fixing} needs ${length(finding.neededMm)}.`;
    case 'grille-close':
      return `The grille stands ${length(finding.standOffMm)} off; the cone needs ${length(finding.neededMm)}.`;
    case 'driver-displacement-missing':
      return 'The maker does not say how much air the driver takes: none is taken off.';
    case 'driver-mass-missing':
      return 'The driver’s mass is not stated: it is not in the weight.';
    case 'opening-off-panel':
      return `The ${finding.purpose} runs ${length(finding.byMm)} off panel ${finding.mark}.`;
    case 'openings-meet':
      return `On panel ${finding.mark} the ${finding.purpose} runs ${length(finding.byMm)} into the ${finding.other}.`;
    case 'brace-meets-driver':
      return `Brace ${finding.mark} meets driver ${finding.driver} by ${length(finding.byMm)}.`;
    case 'brace-meets-terminal':
      return `Brace ${finding.mark} meets the terminal cup by ${length(finding.byMm)}.`;
    case 'terminal-meets-driver':
      return `The terminal cup meets driver ${finding.driver} by ${length(finding.byMm)}.`;
    case 'driver-meets-divider':
      return `Driver ${finding.driver} meets the divider by ${length(finding.byMm)}.`;
    case 'divider-close':
      return `Between driver ${finding.driver} and the divider there are ${length(finding.roomMm)}; ${length(finding.neededMm)} are wanted.`;
    case 'port-meets-divider':
      return `Port ${finding.port} meets the divider by ${length(finding.byMm)}.`;
    case 'terminal-meets-divider':
      return `The terminal cup meets the divider by ${length(finding.byMm)}.`;
    case 'port-too-long':
      return `Port ${finding.port} is ${length(finding.byMm)} too long: there is room for ${length(finding.roomMm)}.`;
    case 'port-length-off':
      return `Port ${finding.port} comes out ${length(finding.builtMm)} long instead of ${length(finding.askedMm)}: between those there is no room for its panels.`;
    case 'port-end-close':
      return `Before the inner end of port ${finding.port} there are ${length(finding.roomMm)}; ${length(finding.neededMm)} are wanted.`;
    case 'port-meets-brace':
      return `Brace ${finding.mark} stands ${length(finding.byMm)} in port ${finding.port}.`;
    case 'port-meets-driver':
      return `Driver ${finding.driver} meets port ${finding.port} by ${length(finding.byMm)}.`;
    case 'port-meets-wall':
      return `Port ${finding.port} meets the ${finding.face} by ${length(finding.byMm)}.`;
    case 'ports-meet':
      return `Ports ${finding.ports.join(' and ')} meet by ${length(finding.byMm)}.`;
    case 'brace-window-small':
      return `The windows of the braces come out smaller: ${percent(finding.solidFraction)} of the wood stays.`;
    case 'no-room-for-braces':
      return `No brace finds room; the largest wall rings at ${hz(finding.firstModeHz)}, wanted above ${hz(finding.targetHz)}.`;
    case 'panel-mode-low':
      return `Panel ${finding.mark} rings at about ${hz(finding.firstModeHz)}, wanted above ${hz(finding.targetHz)}: ${remedyWords(finding, length)}.`;
    case 'bevel-steep':
      return `Panel ${finding.mark} needs a bevel of ${degrees(finding.bevelRad)}; an ordinary saw tilts to ${degrees(finding.limitRad)}.`;
    case 'two-person-lift':
      return `${kg(finding.withDriversKg)} with its drivers: two people lift it.`;
    case 'cutout-air-left-out':
      return `Air in the cut-outs behind the flange is left out: ${finding.litres.toFixed(2)} L, ${finding.percentOfNet.toFixed(1)} % of the net.`;
    case 'lining-not-deducted':
      return 'Lining is not taken off: it acts on the air, not as a solid.';
    case 'net-off-target':
      return `The net volume is ${Math.abs(finding.overLitres).toFixed(1)} L ${finding.overLitres > 0 ? 'above' : 'below'} what sheet 03 wants (${Math.abs(finding.percent).toFixed(0)} %).`;
  }
}

function remedyWords(
  { bracesNeeded, thicknessNeededMm }: Extract<BoxFinding, { code: 'panel-mode-low' }>,
  length: LengthWords,
): string {
  const thicker = `a board of ${length(Math.ceil(thicknessNeededMm))}`;
  if (bracesNeeded === null) return thicker;
  return `${bracesNeeded === 1 ? 'one brace' : `${bracesNeeded} braces`} or ${thicker}`;
}

const DEDUCTIONS: Readonly<Record<Deduction['code'], string>> = {
  driver: 'Driver',
  port: 'Port',
  brace: 'Braces',
  divider: 'Divider',
  'corner-block': 'Corner blocks',
  'inside-doubler': 'Doubler inside',
  'terminal-cup': 'Terminal cup',
  'fitted-part': 'Fitted part',
  sealant: 'Sealant',
  'cutout-air': 'Air in the cut-outs',
};

export function deductionWords({ code, label, count, source }: Deduction): string {
  const name = label ?? DEDUCTIONS[code];
  const counted = count > 1 || code === 'driver' ? `${name} × ${count}` : name;
  return source === 'missing' ? `${counted}, not stated` : counted;
}

/** The first word small, unless it is an abbreviation. */
const lower = (name: string) => `${name.charAt(0).toLowerCase()}${name.slice(1)}`;
const kg = (value: number) => `${value.toFixed(1)} kg`;
const hz = (value: number) => `${Math.round(value)} Hz`;
const degrees = (rad: number) => `${((rad * 180) / Math.PI).toFixed(1)}°`;
const percent = (share: number) => `${Math.round(share * 100)} %`;
