// Fine adjustment of a winner: volume and tuning by halving steps round the best place so far. No randomness, so the
// same winner always ends at the same place; every try is solved by the circuit.

import type { Box } from './box-grid.ts';
import { type Bench, type Candidate, tryBox } from './candidate.ts';
import { compareDesigns } from './ranking.ts';
import type { Trial } from './trial.ts';

/** Over the logarithm: half a step of the grid. */
const FIRST_STEP = { volume: 0.11, tuning: 0.06 };
const HALVINGS = 4;
/** Walks at one step size end by themselves where nothing gets better; this only guards. */
const MOST_MOVES = 12;

/** The best box near `winner`, to a tenth of a litre and of a hertz; `winner` itself where nothing near is better. */
export function refineDesign(bench: Bench, trial: Trial, winner: Candidate): Candidate {
  let best = winner;
  for (let halving = 0; halving <= HALVINGS; halving++) {
    const scale = 0.5 ** halving;
    for (let move = 0; move < MOST_MOVES; move++) {
      const next = neighbours(bench, best.box, scale)
        .map((box) => tryBox(bench, trial, { box, key: winner.key }, null))
        .filter((tried) => typeof tried !== 'string')
        .sort((a, b) => compareDesigns(bench.brief.aim, a, b))[0];
      if (next === undefined || compareDesigns(bench.brief.aim, next, best) >= 0) break;
      best = next;
    }
  }
  return best;
}

function neighbours({ brief }: Bench, box: Box, scale: number): Box[] {
  const { leastLitres, mostLitres } = brief.net;
  const factor = Math.exp(FIRST_STEP.volume * scale);
  const volumes = [box.netLitres / factor, box.netLitres * factor]
    .map((litres) => Math.min(Math.max(toTenth(litres), leastLitres), mostLitres))
    .filter((litres) => box.kind !== 'infinite-baffle' && litres !== box.netLitres)
    .map((netLitres) => ({ ...box, netLitres }));
  if (box.tuningHz === null) return volumes;
  const turn = Math.exp(FIRST_STEP.tuning * scale);
  const tunings = [box.tuningHz / turn, box.tuningHz * turn]
    .map(toTenth)
    .filter((tuningHz) => tuningHz !== box.tuningHz)
    .map((tuningHz) => ({ ...box, tuningHz }));
  return [...volumes, ...tunings];
}

function toTenth(value: number): number {
  return Math.round(value * 10) / 10;
}
