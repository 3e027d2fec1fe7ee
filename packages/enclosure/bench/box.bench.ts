// How long a box takes, against a yardstick on the same machine: one JSON round trip of its own result. Absolute
// times differ from machine to machine, the ratio hardly. Run: `node packages/enclosure/bench/box.bench.ts`
import { boxForNetVolume } from '../src/box-for-net-volume.ts';
import { buildBox } from '../src/build-box.ts';
import { BARE_BOX, BARE_WEDGE, HALDEN_TWIN, TWO_CHAMBERS } from '../src/example-designs.ts';

declare const performance: { now(): number };
declare const console: { log(line: string): void };

const ROUNDS = 400;
const WARM_UP = 200;

/** Median of `ROUNDS` single runs, ms. */
function medianMs(run: () => unknown): number {
  for (let round = 0; round < WARM_UP; round++) run();
  const times = Array.from({ length: ROUNDS }, () => {
    const start = performance.now();
    run();
    return performance.now() - start;
  }).sort((a, b) => a - b);
  return times[ROUNDS / 2] ?? Number.NaN;
}

for (const [name, design] of Object.entries({ BARE_BOX, BARE_WEDGE, HALDEN_TWIN, TWO_CHAMBERS })) {
  const text = JSON.stringify(buildBox(design));
  const boxMs = medianMs(() => buildBox(design));
  const yardstickMs = medianMs(() => JSON.parse(JSON.stringify(JSON.parse(text))));
  const ratio = (boxMs / yardstickMs).toFixed(2);
  console.log(
    `${name}: buildBox ${boxMs.toFixed(3)} ms, yardstick ${yardstickMs.toFixed(3)} ms, ratio ${ratio}, result ${text.length} characters`,
  );
}

const start = performance.now();
const SEARCHES = 20;
for (let search = 0; search < SEARCHES; search++) {
  boxForNetVolume({ design: HALDEN_TWIN, targetNetLitres: 60, vary: 'depth' });
}
console.log(`boxForNetVolume of the twin: ${((performance.now() - start) / SEARCHES).toFixed(1)} ms`);
