// solve <engine>: JSON documents on stdin, a line each -> answers on stdout, a line each, same order.
// solve <engine> --schema: JSON Schema of both. Exit code 0 = all answered, 1 = some refused, 2 = wrongly called.
import { once } from 'node:events';
import { z } from 'zod';
import { answerLines } from './answer-lines.ts';
import { readCommand } from './command.ts';
import type { SolveEngine, SolveOptions } from './engine.ts';
import { ENGINE_NAMES, loadEngine } from './registry.ts';
import { textLines } from './text-lines.ts';

const USAGE = `solve <engine> [--seconds N] [--seed N] < cases.jsonl > answers.jsonl
solve <engine> --schema
engines: ${ENGINE_NAMES.join(', ')}`;

async function run(): Promise<number> {
  const command = readCommand(process.argv.slice(2));
  if (command.kind === 'misuse') return misused(command.message);
  const engine = await loadEngine(command.engine);
  if (engine === null) return misused(`there is no engine named ${command.engine}`);
  if (command.kind === 'solve') return solveAll(engine, command.options);
  await print(JSON.stringify(schemasOf(engine), null, 2));
  return 0;
}

function misused(message: string): number {
  process.stderr.write(`${message}\n${USAGE}\n`);
  return 2;
}

function schemasOf(engine: SolveEngine) {
  return {
    engine: engine.name,
    input: z.toJSONSchema(engine.inputSchema, { io: 'input' }),
    output: z.toJSONSchema(engine.outputSchema),
  };
}

async function solveAll(engine: SolveEngine, options: SolveOptions): Promise<number> {
  let exitCode = 0;
  process.stdin.setEncoding('utf8');
  for await (const { text, isRefused, failure } of answerLines(engine, textLines(process.stdin), options)) {
    if (isRefused) exitCode = 1;
    if (failure !== null) process.stderr.write(`${failure.stack ?? failure.message}\n`);
    await print(text);
  }
  return exitCode;
}

/** Waits where the reader is slower than the engine, so that answers don't pile up. */
async function print(text: string): Promise<void> {
  if (!process.stdout.write(`${text}\n`)) await once(process.stdout, 'drain');
}

/** A reader that has seen enough (`| head`) closes the pipe: that ends the run and is no fault. */
function endOnClosedPipe(error: Error): void {
  if ('code' in error && error.code === 'EPIPE') process.exit(0);
  throw error;
}

process.stdout.on('error', endOnClosedPipe);
process.exitCode = await run();
