// A child process that is part of the program: API, worker or front door.
import { type ChildProcess, spawn } from 'node:child_process';
import path from 'node:path';

export const ROOT = path.resolve(import.meta.dirname, '../..');
const STOP_WITHIN_MS = 15_000;

/**
 * The API's heap. What it holds is under 100 MB; left alone on a large machine, Node clears up so seldom that the
 * process takes half a gigabyte (`npm run bench -- house`).
 */
export const API_HEAP = ['--max-semi-space-size=4', '--max-old-space-size=512'];

export type Part = {
  readonly name: string;
  /** Settles when the process ends, however it ends. */
  readonly ended: Promise<void>;
  stop(): Promise<void>;
};

/** Starts one part and waits until it says that it is ready; rejects with what it printed when it ends before. */
export function startPart(options: {
  readonly name: string;
  readonly script: string;
  readonly args?: readonly string[];
  readonly nodeArgs?: readonly string[];
  readonly env: Readonly<Record<string, string>>;
  /** A text on its standard output that means ready; without it the part sends the message `ready`. */
  readonly readyText?: string;
  readonly onLine?: (line: string) => void;
}): Promise<Part> {
  const { name, script, args = [], nodeArgs = [], env, readyText, onLine } = options;
  const child = spawn(
    process.execPath,
    // The database driver of the ORM sends queries of one transaction side by side, which `pg` will refuse one day.
    [
      '--disable-warning=ExperimentalWarning',
      '--disable-warning=DeprecationWarning',
      ...nodeArgs,
      path.join(ROOT, script),
      ...args,
    ],
    {
      cwd: ROOT,
      env: { ...process.env, ...env },
      stdio: ['ignore', 'pipe', 'pipe', 'ipc'],
      // Its own group: Ctrl-C reaches the starter alone, which stops the parts in order.
      detached: process.platform !== 'win32',
    },
  );
  const said: string[] = [];
  const ended = new Promise<void>((resolve) => child.once('exit', () => resolve()));
  return new Promise((resolve, reject) => {
    const ready = () => resolve({ name, ended, stop: () => stopChild(child, ended) });
    const hear = (chunk: Buffer) => {
      for (const line of chunk
        .toString()
        .split('\n')
        .filter((text) => text.trim() !== '')) {
        said.push(line);
        if (said.length > 60) said.shift();
        onLine?.(line);
        if (readyText !== undefined && line.includes(readyText)) ready();
      }
    };
    child.stdout?.on('data', hear);
    child.stderr?.on('data', hear);
    child.on('message', (message) => {
      if (message === 'ready') ready();
    });
    child.once('error', reject);
    child.once('exit', (code) =>
      reject(new Error(`The ${name} did not start (exit ${code}). It said:\n${said.slice(-20).join('\n')}`)),
    );
  });
}

async function stopChild(child: ChildProcess, ended: Promise<void>): Promise<void> {
  if (child.exitCode !== null || child.signalCode !== null) return;
  child.kill('SIGTERM');
  const timer = setTimeout(() => child.kill('SIGKILL'), STOP_WITHIN_MS);
  await ended;
  clearTimeout(timer);
}
