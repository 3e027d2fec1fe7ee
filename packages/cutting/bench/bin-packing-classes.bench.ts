/// <reference types="node" />
// Sheets used against the lower bound over the ten classical classes, and a plain first-fit in the same run.
//
//   node packages/cutting/bench/bin-packing-classes.bench.ts --per-class 2 --seconds 2 --rotate
//
// --per-class N  instances of each class and size, 1 to 10 (default 1: 50 instances)
// --seconds S    processor time for one instance (default 0.4)
// --rotate       parts may turn
// --class K      one class only, 1 to 10
// --from I       first instance index (default 0)
// --seed N       seed of the search (default 1)
import { parseArgs } from 'node:util';
import { isRefusal } from '@gusset/units';
import { checkLayout, layoutSheets } from '../src/index.ts';
import { CLASS_NAMES, classInstance, INSTANCE_SIZES } from './bin-packing-classes.ts';
import { firstFitShelves } from './first-fit-shelves.ts';

type Sums = { bound: number; sheets: number; firstFit: number };

const { values } = parseArgs({
  options: {
    'per-class': { type: 'string', default: '1' },
    seconds: { type: 'string', default: '0.4' },
    rotate: { type: 'boolean', default: false },
    class: { type: 'string' },
    from: { type: 'string', default: '0' },
    seed: { type: 'string', default: '1' },
  },
});
const perClass = Number(values['per-class']);
const seconds = Number(values.seconds);
const from = Number(values.from);
/** Milliseconds of processor time, so that a busy machine does not cut an instance short. */
const now = (): number => process.cpuUsage().user / 1_000;

function solveOne(classIndex: number, n: number, index: number): Sums & { iterations: number } {
  const { input } = classInstance(classIndex, n, index, values.rotate);
  const result = layoutSheets(input, { seed: Number(values.seed), seconds, now });
  if (isRefusal(result)) throw new Error(JSON.stringify(result));
  const problems = checkLayout(input, result);
  if (problems.length > 0 || result.unplacedPartIds.length > 0) throw new Error(JSON.stringify(problems));
  return {
    bound: result.lowerBoundSheets,
    sheets: result.totals.fullSheets,
    firstFit: firstFitShelves(input),
    iterations: result.iterations,
  };
}

const total: Sums = { bound: 0, sheets: 0, firstFit: 0 };
let iterations = 0;
const startedAt = now();
CLASS_NAMES.forEach((className, classIndex) => {
  if (values.class !== undefined && classIndex !== Number(values.class) - 1) return;
  const sums: Sums = { bound: 0, sheets: 0, firstFit: 0 };
  for (const n of INSTANCE_SIZES) {
    for (let index = from; index < from + perClass; index++) {
      const one = solveOne(classIndex, n, index);
      sums.bound += one.bound;
      sums.sheets += one.sheets;
      sums.firstFit += one.firstFit;
      iterations += one.iterations;
    }
  }
  total.bound += sums.bound;
  total.sheets += sums.sheets;
  total.firstFit += sums.firstFit;
  console.log(row(className, sums));
});
console.log(row('all', total));
console.log(
  `${iterations} layouts tried in ${((now() - startedAt) / 1_000).toFixed(1)} s; every layout checked`,
);

function row(name: string, sums: Sums): string {
  const ratio = (sheets: number): string => (sheets / sums.bound).toFixed(4);
  return (
    `${name.padStart(4)}  bound ${String(sums.bound).padStart(5)}` +
    `  sheets ${String(sums.sheets).padStart(5)}  ratio ${ratio(sums.sheets)}` +
    `  first-fit ${String(sums.firstFit).padStart(5)}  ratio ${ratio(sums.firstFit)}`
  );
}
