// How long a step of a dragged slider takes on the sound sheet: the sheet worked out and its level chart drawn, for each
// kind of box and for six designs at once; and how much of it is kept. `node packages/sheets/bench/sound.bench.ts`.
// Milliseconds hold on this machine only.
import { designOf, type SoundInput } from '@gusset/contracts/sound';
import { renderSvg, responseChart } from '@gusset/drawings';
import { soundChart, soundSheet } from '../src/index.ts';
import { INPUTS_BY_KIND, litres, QUINCE_FACTS } from '../src/sound/sound-fixture.ts';

/** One picture of a screen that draws sixty a second. */
const FRAME_MS = 16;
const ROUNDS = 200;
const WARM_UP = 30;
const BYTES_PER_KB = 1_000;

const kinds = Object.values(INPUTS_BY_KIND);
const six: SoundInput = {
  ...INPUTS_BY_KIND['dual-tuned-bandpass'],
  variants: (['B', 'C', 'D', 'E', 'F'] as const).flatMap((letter, i) => {
    const input = kinds[i];
    return input === undefined ? [] : [{ letter, name: '', design: designOf(input) }];
  }),
};

function step(input: SoundInput, round: number) {
  const net = input.enclosure === 'infinite-baffle' ? null : litres(30 + (round % 30));
  const outcome = soundSheet.compute({ ...input, targetNet: net }, QUINCE_FACTS, {});
  if (outcome.state !== 'ready') throw new Error(`the bench's ${input.enclosure} is not complete`);
  const letters = outcome.result.variants.map(({ letter }) => letter);
  const chart = soundChart('level', outcome.result, {
    isFreeAir: false,
    isBrief: false,
    letters,
    issued: null,
    spread: null,
  });
  renderSvg(responseChart(chart), { theme: 'css-variables', idPrefix: 'bench' });
  return outcome.result;
}

let isLate = false;
for (const [name, input] of [...Object.entries(INPUTS_BY_KIND), ['six designs', six]] as const) {
  for (let round = 0; round < WARM_UP; round++) step(input, round);
  const times = Array.from({ length: ROUNDS }, (_, round) => {
    const start = performance.now();
    step(input, round);
    return performance.now() - start;
  }).sort((a, b) => a - b);
  const middle = times[ROUNDS / 2] ?? 0;
  const keptKb = JSON.stringify(step(input, 0)).length / BYTES_PER_KB;
  isLate ||= middle > FRAME_MS;
  process.stdout.write(`${name.padEnd(24)} median ${middle.toFixed(2)} ms   keeps ${keptKb.toFixed(0)} kB\n`);
}
process.stdout.write(`${isLate ? 'OVER' : 'within'} one frame of ${FRAME_MS} ms\n`);
if (isLate) process.exitCode = 1;
