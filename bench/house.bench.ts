// How long the program takes to start and how much memory its API holds: with the demo shop, and with a shop of 10,000
// jobs after some hundred questions. Beside it a bare Fastify process that answers the same rows.
// The pages are built before anything is timed; packages are there, or this would not run.
import { type ChildProcess, execFileSync, spawn } from 'node:child_process';
import { randomUUID } from 'node:crypto';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { SHEET_KINDS } from '@gusset/contracts/sheet';
import { migrate, startEmbeddedPostgres } from '@gusset/database';
import pg from 'pg';
import { z } from 'zod';
import { freePort } from '../scripts/start/ports.ts';
import { API_HEAP, ROOT, startPart } from '../scripts/start/process.ts';
import { ensureWebBuild } from '../scripts/start/web-build.ts';
import { ask, call, foundShop, LARGE_SHOP_JOBS, PUBLIC_URL, seedLargeShop } from './large-shop.ts';

const API_SCRIPT = 'apps/api/src/server.ts';
const DEMO_LIMIT_MB = 350;
const LARGE_LIMIT_MB = 600;
const QUESTIONS = 450;
const ASK_MEMORY_EVERY = 15;
const listSchema = z.object({
  result: z.object({
    data: z.object({ rows: z.array(z.object({ id: z.string(), number: z.number() })) }),
  }),
});

ensureWebBuild();
// One for each database: the server may run as another user than this process and owns the whole folder.
const startFolder = mkdtempSync(path.join(tmpdir(), 'gusset-house-start-'));
const largeFolder = mkdtempSync(path.join(tmpdir(), 'gusset-house-large-'));
try {
  process.stdout.write(`${'the house'.padEnd(52)} measured    target\n`);
  await startTwice();
  await serveLargeShop();
} finally {
  for (const folder of [startFolder, largeFolder]) rmSync(folder, { recursive: true, force: true });
}

async function startTwice(): Promise<void> {
  const first = await startProgram();
  print('first start: database, tables, demo shop', `${first.seconds.toFixed(1)} s`);
  await first.stop();
  const second = await startProgram();
  print('second start', `${second.seconds.toFixed(1)} s`);
  try {
    print('API with the demo shop, just started', `${memoryMb(second.pid, API_SCRIPT).toFixed(0)} MB`);
    printMemory('API with the demo shop, every sheet of it read', await lookAround(second), DEMO_LIMIT_MB);
  } finally {
    await second.stop();
  }
}

type Program = {
  readonly seconds: number;
  readonly url: string;
  readonly pid: number;
  stop(): Promise<void>;
};

/** `npm start` as a person types it, until it says that it is ready. */
async function startProgram(): Promise<Program> {
  const port = await freePort();
  const started = performance.now();
  const child = spawn(
    process.execPath,
    ['--disable-warning=DeprecationWarning', path.join(ROOT, 'scripts/start.ts')],
    {
      cwd: ROOT,
      env: { ...process.env, PORT: String(port), GUSSET_DATA_DIR: startFolder },
      stdio: ['ignore', 'pipe', 'pipe'],
    },
  );
  await hear(child, 'Gusset is ready');
  const seconds = (performance.now() - started) / 1_000;
  return {
    seconds,
    url: `http://localhost:${port}`,
    pid: child.pid ?? 0,
    async stop() {
      const ended = new Promise<void>((resolve) => child.once('exit', () => resolve()));
      child.kill('SIGTERM');
      await ended;
    },
  };
}

function hear(child: ChildProcess, text: string): Promise<void> {
  let said = '';
  return new Promise((resolve, reject) => {
    const listen = (chunk: Buffer) => {
      said += chunk.toString();
      if (said.includes(text)) resolve();
    };
    child.stdout?.on('data', listen);
    child.stderr?.on('data', listen);
    child.once('error', reject);
    child.once('exit', () => reject(new Error(`it did not start:\n${said}`)));
  });
}

/** As a person does on the first morning: the bays, the list, each sheet of each job. Answers the most memory. */
async function lookAround({ url, pid }: Program): Promise<number> {
  const signIn = z
    .object({ email: z.string(), password: z.string() })
    .parse(JSON.parse(readFileSync(path.join(startFolder, 'demo-sign-in.json'), 'utf8')));
  const answer = await fetch(`${url}/api/auth/sign-in/email`, {
    method: 'POST',
    headers: { 'content-type': 'application/json', origin: url },
    body: JSON.stringify(signIn),
  });
  if (!answer.ok) throw new Error(`no sign-in: ${await answer.text()}`);
  const cookie = cookiesOf(answer);
  const listed = await call(url, 'job.list', { limit: 50 }, cookie);
  const { rows } = listSchema.parse(JSON.parse(listed)).result.data;
  const questions = [
    () => call(url, 'plan.current', {}, cookie),
    ...rows.flatMap(({ id, number }) => [
      () => call(url, 'job.byNumber', { number }, cookie),
      ...SHEET_KINDS.map((kind) => () => call(url, `sheet.${kind}.read`, { jobId: id }, cookie)),
    ]),
  ];
  return mostMemory(questions, () => memoryMb(pid, API_SCRIPT));
}

async function serveLargeShop(): Promise<void> {
  const server = await startEmbeddedPostgres({ dataFolder: largeFolder, database: 'large' });
  const pool = new pg.Pool({ connectionString: server.adminUrl, max: 4 });
  try {
    await migrate(server.adminUrl);
    const port = await freePort();
    const api = await startPart({
      name: 'API',
      script: API_SCRIPT,
      nodeArgs: API_HEAP,
      env: {
        API_PORT: String(port),
        PUBLIC_URL,
        DATABASE_URL: server.apiUrl,
        AUTH_SECRET: randomUUID() + randomUUID(),
        FILES_DIR: path.join(largeFolder, 'files'),
        WITH_WORKER: '1',
        LOG_LEVEL: 'error',
        NODE_ENV: 'production',
      },
    });
    const url = `http://127.0.0.1:${port}`;
    const cookie = await foundShop(url);
    const shopId = await seedLargeShop(pool);
    const { rows } = await pool.query<{ id: string }>('SELECT id FROM job ORDER BY number LIMIT 40');
    const texts = ['7', '2417', 'person 77', 'bass box', 'qr 4711', 'zzzzzz'];
    const jobs = rows.map(({ id }) => id);
    const questions = Array.from({ length: QUESTIONS }, (_, i) => () => {
      const jobId = jobs[i % jobs.length] ?? '';
      const kind = SHEET_KINDS[i % SHEET_KINDS.length];
      if (i % 3 === 0)
        return call(url, 'job.list', { limit: 50, offset: (i * 50) % LARGE_SHOP_JOBS }, cookie);
      if (i % 3 === 1) return call(url, 'search.everything', { text: texts[i % texts.length] ?? '' }, cookie);
      return call(url, `sheet.${kind}.read`, { jobId }, cookie);
    });
    const most = await mostMemory(questions, () => memoryMb(process.pid, API_SCRIPT));
    await api.stop();
    const bare = await askBare(server.adminUrl, shopId);
    const jobCount = LARGE_SHOP_JOBS.toLocaleString('en');
    printMemory(`API, ${jobCount} jobs, ${QUESTIONS} lists, searches, sheets`, most, LARGE_LIMIT_MB);
    print(`bare Fastify and pg, ${QUESTIONS} of those lists`, `${bare.toFixed(0)} MB`);
    print('ratio to the bare process', (most / bare).toFixed(2));
  } finally {
    await pool.end();
    await server.stop();
  }
}

async function askBare(databaseUrl: string, shopId: string): Promise<number> {
  const script = 'bench/bare-server.ts';
  let address = '';
  const bare = await startPart({
    name: 'bare server',
    script,
    args: [shopId],
    env: { DATABASE_URL: databaseUrl, NODE_ENV: 'production' },
    readyText: 'bare ',
    onLine: (line) => {
      address = line.replace('bare ', '');
    },
  });
  const questions = Array.from({ length: QUESTIONS }, () => () => ask(`${address}/jobs`, ''));
  const most = await mostMemory(questions, () => memoryMb(process.pid, script));
  await bare.stop();
  return most;
}

/** One after the other; the most that was held at any of the looks. */
async function mostMemory(
  questions: readonly (() => Promise<string>)[],
  memory: () => number,
): Promise<number> {
  let most = memory();
  for (const [i, question] of questions.entries()) {
    await question();
    if (i % ASK_MEMORY_EVERY === 0) most = Math.max(most, memory());
  }
  return Math.max(most, memory());
}

/** What the system says of the child of `parentPid` that runs this script: all of it, threads and libraries too. */
function memoryMb(parentPid: number, script: string): number {
  const table = execFileSync('ps', ['-axo', 'ppid=,rss=,command='], { encoding: 'utf8' });
  const line = table
    .split('\n')
    .map((text) => /^\s*(\d+)\s+(\d+)\s+(.*)$/.exec(text))
    .find((match) => match !== null && Number(match[1]) === parentPid && match[3]?.includes(script));
  if (line == null) throw new Error(`no process of ${script}`);
  return Number(line[2]) / 1_024;
}

function cookiesOf(answer: Response): string {
  return answer.headers
    .getSetCookie()
    .map((line) => line.split(';')[0])
    .join('; ');
}

function printMemory(what: string, mb: number, limitMb: number): void {
  const isWithin = mb <= limitMb;
  print(what, `${mb.toFixed(0)} MB`, `${limitMb} MB  ${isWithin ? 'within' : 'OVER'}`);
  if (!isWithin) process.exitCode = 1;
}

function print(what: string, measured: string, target = ''): void {
  process.stdout.write(`${what.padEnd(52)} ${measured.padStart(8)}    ${target}\n`);
}
