// How long a step of a dragged dimension takes: the sound and the box sheet worked out again, the box standing in a
// surveyed section. `node packages/sheets/bench/live.bench.ts`. Milliseconds hold on this machine only, so a round of
// plain JSON over the same result stands beside them as a yardstick. The 95th percentile also shows what else runs.
import type { BoxInput } from '@gusset/contracts/box';
import { renderSvg } from '@gusset/drawings';
import {
  BOX_FACTS,
  BOX_INPUT,
  BOX_UPSTREAM,
  length,
  SOUND_FACTS,
  SOUND_INPUT,
  squareCavity,
} from '../src/box/box-fixture.ts';
import { boxFrontScene } from '../src/box/box-front-scene.ts';
import { boxPlanScene } from '../src/box/box-plan-scene.ts';
import { boxSectionScene } from '../src/box/box-section-scene.ts';
import { boxSheet, soundSheet } from '../src/index.ts';

/** One picture of a screen that draws sixty a second. */
const FRAME_MS = 16;
const ROUNDS = 400;
const WARM_UP = 60;

type Step = (round: number) => unknown;

function timesMs(step: Step): readonly number[] {
  for (let round = 0; round < WARM_UP; round++) step(round);
  const times = Array.from({ length: ROUNDS }, (_, round) => {
    const start = performance.now();
    step(round);
    return performance.now() - start;
  });
  return times.sort((a, b) => a - b);
}

const at = (times: readonly number[], share: number) => times[Math.floor((times.length - 1) * share)] ?? 0;

/** Another depth and another target each round, as a hand on the drawing gives them. */
const soundInput = (round: number) => {
  const litres = 25 + (round % 20);
  return { ...SOUND_INPUT, targetNet: { litres, typed: String(litres) } };
};
const boxInput = (round: number) => ({
  ...BOX_INPUT,
  bracing: { kind: 'suggested' } as const,
  cornerBlocks: { leg: length(20), seams: 'all' } as const,
  outside: { ...BOX_INPUT.outside, depth: length(300 + (round % 100)) },
});

const sound: Step = (round) => soundSheet.compute(soundInput(round), SOUND_FACTS, {});
const box: Step = (round) => boxSheet.compute(boxInput(round), BOX_FACTS, BOX_UPSTREAM);
const both: Step = (round) => {
  const outcome = soundSheet.compute(soundInput(round), SOUND_FACTS, {});
  if (outcome.state !== 'ready') throw new Error('the sound sheet of the bench is not complete');
  return boxSheet.compute(boxInput(round), BOX_FACTS, { ...BOX_UPSTREAM, sound: outcome.result });
};
/** The knee of a clipped wedge, or the foot of an L, moved by hand; section, plan and front drawn again. */
const redrawn = (shape: BoxInput['shape']) => (round: number) => {
  const given = boxInput(round);
  const outside = { ...given.outside, depthTop: length(200), kneeHeight: length(100 + (round % 40)) };
  const input = { ...given, shape, outside, drivers: { ...given.drivers, mount: 'surface' as const } };
  const outcome = boxSheet.compute(input, BOX_FACTS, BOX_UPSTREAM);
  if (outcome.state !== 'ready') throw new Error(`the ${shape} of the bench is ${outcome.state}`);
  const { result } = outcome;
  const scenes = [boxSectionScene(result, cavity), boxPlanScene(result, cavity), boxFrontScene(result)];
  return scenes.map((scene, at) =>
    scene === null ? '' : renderSvg(scene, { theme: 'css-variables', idPrefix: `view-${at}` }),
  );
};
const cavity = squareCavity();
const held = both(0);
const yardstick: Step = () => JSON.parse(JSON.stringify(held));

const lines = [
  ['sound', sound],
  ['box', box],
  ['sound + box', both],
  ['clipped wedge, 3 views drawn', redrawn('clipped-wedge')],
  ['L, 3 views drawn', redrawn('l')],
  ['JSON round trip of the box', yardstick],
] as const;
let isLate = false;
for (const [name, step] of lines) {
  const times = timesMs(step);
  const [middle, late] = [at(times, 0.5), at(times, 0.95)];
  isLate ||= middle > FRAME_MS;
  process.stdout.write(
    `${name.padEnd(28)} median ${middle.toFixed(2)} ms   95 % within ${late.toFixed(2)} ms\n`,
  );
}
process.stdout.write(`${isLate ? 'OVER' : 'within'} one frame of ${FRAME_MS} ms\n`);
if (isLate) process.exitCode = 1;
