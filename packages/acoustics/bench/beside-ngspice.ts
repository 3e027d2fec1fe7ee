// What the same sweep costs a general circuit simulator. Its start-up is not counted: many analyses in one run less one.
import { execFileSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { SoundSystemInput } from '@gusset/contracts/acoustics';
import { netlistFor } from '../truth/netlist.ts';

const ANALYSES = 60;
const RUNS = 5;

export type NgspiceTimes = {
  /** One AC analysis, solved and held in memory, ms. */
  readonly sweepMs: number;
  /** What our curves need: three points a frequency for the delay, and the vectors out of the program, ms. */
  readonly curvesMs: number;
  /** A whole run of the program for those curves, ms. */
  readonly processMs: number;
};

/** Null where there is no ngspice on the PATH. */
export function timeNgspice(
  input: SoundSystemInput,
  sweep: { lowHz: number; highHz: number; count: number },
): NgspiceTimes | null {
  const netlist = netlistFor(input);
  const folder = mkdtempSync(join(tmpdir(), 'bench-'));
  const file = join(folder, 'net.cir');
  const out = join(folder, 'out.txt');
  const run = (commands: readonly string[]): number => {
    const lines = [...netlist.lines, '.control', ...commands, 'quit', '.endc', '.end'];
    writeFileSync(file, `${lines.join('\n')}\n`);
    const start = performance.now();
    execFileSync('ngspice', ['-b', file], { stdio: 'ignore' });
    return performance.now() - start;
  };
  /** The quietest of several, so that what else the machine does is counted for neither. */
  const quietest = (commands: readonly string[]): number =>
    Math.min(...Array.from({ length: RUNS }, () => run(commands)));
  const each = (commands: readonly string[]): number => {
    const many = Array.from({ length: ANALYSES + 1 }, () => commands).flat();
    return (quietest(many) - quietest(commands)) / ANALYSES;
  };
  const { lowHz, highHz, count } = sweep;
  const vectors = Object.values(netlist.vectors).join(' ');
  const curves = [`ac lin ${3 * count} ${lowHz} ${highHz}`, `wrdata ${out} ${vectors}`, 'destroy all'];
  try {
    return {
      sweepMs: each([`ac lin ${count} ${lowHz} ${highHz}`, 'destroy all']),
      curvesMs: each(curves),
      processMs: quietest(curves),
    };
  } catch (error) {
    if (error instanceof Error && 'code' in error && error.code === 'ENOENT') return null;
    throw error;
  } finally {
    rmSync(folder, { recursive: true });
  }
}
