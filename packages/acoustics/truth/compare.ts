// Prints how far the engine is from the truth, by kind of enclosure: `node packages/acoustics/truth/compare.ts`.
// Needs no ngspice: the fixture holds its answers. Worst of all cases of a kind and all frequencies.
import { isRefusal } from '@gusset/units';
import { solveResponse, solveTimeResponse } from '../src/index.ts';
import { CURVES, type CurveName, differences, readFixture, TOLERANCE } from './agreement.ts';
import { STEP_AFTER_MS, stepDifferences } from './step-agreement.ts';

const fixture = readFixture();
const kinds = [...new Set(fixture.answers.map(({ input }) => kindOf(input)))];
const worst = new Map<string, number>();
const cases = new Map<string, number>();

function kindOf({ enclosure, array }: (typeof fixture.answers)[number]['input']): string {
  const isPair = array !== undefined && array.isobaric !== undefined && array.isobaric !== null;
  return isPair ? `${enclosure.kind}, pair` : enclosure.kind;
}

for (const answer of fixture.answers) {
  const kind = kindOf(answer.input);
  const result = solveResponse(answer.input);
  if (isRefusal(result)) throw new Error(`${answer.id}: ${result.refusal.why}`);
  cases.set(kind, (cases.get(kind) ?? 0) + 1);
  for (const name of CURVES) {
    const found = differences(name, answer, result);
    if (found === null) continue;
    const key = `${kind} ${name}`;
    worst.set(key, Math.max(worst.get(key) ?? 0, ...found));
  }
}

const COLUMNS: readonly { readonly title: string; readonly names: readonly CurveName[] }[] = [
  { title: 'level dB', names: ['splDb'] },
  { title: 'phase rad', names: ['phaseRad'] },
  { title: 'delay ms', names: ['groupDelayMs'] },
  { title: '|Z| share', names: ['impedanceOhm'] },
  { title: 'Z phase rad', names: ['impedancePhaseRad'] },
  { title: 'power share', names: ['currentArms', 'realPowerWatts', 'apparentPowerVa'] },
  { title: 'travel share', names: ['excursionMm', 'innerExcursionMm', 'radiatorExcursionMm'] },
  { title: 'port air share', names: ['portSpeedMps', 'rearPortSpeedMps'] },
];

const row = (cells: readonly string[]) =>
  console.log(`| ${cells.map((cell, i) => (i === 0 ? cell.padEnd(28) : cell.padStart(14))).join(' | ')} |`);
row(['enclosure (cases)', ...COLUMNS.map(({ title }) => title)]);
row([
  'allowed',
  ...COLUMNS.map(({ names }) => String(names[0] === undefined ? '' : TOLERANCE[names[0]].allowed)),
]);
for (const kind of kinds) {
  row([
    `${kind} (${cases.get(kind)})`,
    ...COLUMNS.map(({ names }) => {
      const found = names.flatMap((name) => worst.get(`${kind} ${name}`) ?? []);
      return found.length === 0 ? '' : Math.max(...found).toExponential(1);
    }),
  ]);
}

console.log(`\nStep response, share of its largest value, from ${STEP_AFTER_MS} ms after the edge`);
for (const step of fixture.steps) {
  const result = solveTimeResponse(step.input);
  if (isRefusal(result)) throw new Error(`${step.id}: ${result.refusal.why}`);
  row([step.id, Math.max(...stepDifferences(step, result)).toExponential(1)]);
}
