// The door as a shell sees it: a process of its own.
import { spawnSync } from 'node:child_process';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { z } from 'zod';
import { ENGINE_NAMES, loadEngine } from './registry.ts';

const main = fileURLToPath(new URL('./main.ts', import.meta.url));
const PATIENCE_MS = 30_000; // a loaded machine starts Node slowly

function solve(args: readonly string[], input = '') {
  return spawnSync(process.execPath, [main, ...args], { input, encoding: 'utf8', timeout: PATIENCE_MS });
}

const closed = (id: string, litres: number) =>
  JSON.stringify({
    id,
    frequencies_Hz: [40],
    source: { voltage_Vrms: 10 },
    driver: { fs_Hz: 29.5, Qms: 4.6, Qes: 0.52, Vas_L: 48, Sd_cm2: 340, Re_ohm: 3.6 },
    enclosure: { type: 'sealed', chamber: { volume_L: litres } },
  });

describe('solve', { timeout: PATIENCE_MS }, () => {
  it('answers line by line on stdout and ends with 0', () => {
    const { stdout, stderr, status } = solve(['response'], `${closed('a', 30)}\n${closed('b', 60)}\n`);
    const answers = stdout
      .trimEnd()
      .split('\n')
      .map((line) => JSON.parse(line));
    expect(answers.map(({ id }) => id)).toEqual(['a', 'b']);
    expect(answers[0].spl_dB[0]).toBeCloseTo(95.985, 3);
    expect(stderr).toBe('');
    expect(status).toBe(0);
  });

  it('ends with 1 when a document is refused, and answers the others', () => {
    const { stdout, status } = solve(['response'], `${closed('a', -1)}\nnot json\n${closed('c', 30)}`);
    const answers = stdout
      .trimEnd()
      .split('\n')
      .map((line) => JSON.parse(line));
    expect(answers).toMatchObject([
      { id: 'a', refusal: { field: 'enclosure.chamber.volume_L', got: -1 } },
      { id: null, refusal: { why: 'line 2 is not JSON' } },
      { id: 'c', frequencies_Hz: [40] },
    ]);
    expect(status).toBe(1);
  });

  it('prints JSON Schema of input and output', () => {
    const { stdout, status } = solve(['response', '--schema']);
    expect(JSON.parse(stdout)).toMatchObject({
      engine: 'response',
      input: { type: 'object', required: expect.arrayContaining(['id', 'driver']) },
      output: { type: 'object' },
    });
    expect(status).toBe(0);
  });

  it('says how it is called, on stderr alone, and ends with 2', () => {
    const { stdout, stderr, status } = solve(['spice']);
    expect(stdout).toBe('');
    expect(stderr).toContain('there is no engine named spice');
    expect(stderr).toContain('response');
    expect(status).toBe(2);
  });

  it('has nothing to say to no documents', () => {
    expect(solve(['response'])).toMatchObject({ stdout: '', stderr: '', status: 0 });
  });
});

describe('registry', () => {
  it.each(ENGINE_NAMES)('loads %s under its own name', async (name) => {
    expect((await loadEngine(name))?.name).toBe(name);
  });

  it.each(ENGINE_NAMES)('can print what %s takes and gives', async (name) => {
    const engine = await loadEngine(name);
    if (engine === null) throw new Error(`no ${name}`);
    expect(z.toJSONSchema(engine.inputSchema, { io: 'input' })).toMatchObject({ type: 'object' });
    expect(z.toJSONSchema(engine.outputSchema)).toMatchObject({ type: 'object' });
  });

  it('knows no engine by a name that every object has', async () => {
    expect(await loadEngine('toString')).toBeNull();
  });
});
