// What the person at the terminal reads: plain lines, one a step, and one sentence when something stops us.

export function say(line: string): void {
  process.stdout.write(`${line}\n`);
}

/** Ends the program with a sentence and no stack trace. */
export function stopWith(error: unknown): never {
  const text = error instanceof Error ? error.message : String(error);
  process.stderr.write(`\n${text}\n`);
  if (process.env.GUSSET_DEBUG === '1' && error instanceof Error)
    process.stderr.write(`${error.stack ?? ''}\n`);
  process.exit(1);
}
