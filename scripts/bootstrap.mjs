// Runs before everything else, on whatever Node started npm (20 or newer), before node_modules exists: installs the
// packages when the lockfile asks for it, and generates the database client. Plain JavaScript, no dependencies.
import { spawnSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import path from 'node:path';

const root = path.resolve(import.meta.dirname, '..');
const MIN_NODE_MAJOR = 20;
const FIRST_INSTALL_HINT = 'This takes about a minute the first time.';

const major = Number(process.versions.node.split('.')[0]);
if (major < MIN_NODE_MAJOR) {
  fail(`Gusset needs Node ${MIN_NODE_MAJOR} or newer to start; this is Node ${process.versions.node}.`);
}
process.chdir(root);
const quietEnv = {
  ...process.env,
  NEXT_TELEMETRY_DISABLED: '1',
  TURBO_TELEMETRY_DISABLED: '1',
  CHECKPOINT_DISABLE: '1',
  DO_NOT_TRACK: '1',
};

installPackages();
generateClient();

function installPackages() {
  const lock = hashOf(['package-lock.json']);
  const stamp = path.join(root, 'node_modules', '.gusset-lock');
  if (existsSync(stamp) && readFileSync(stamp, 'utf8') === lock) return;
  say(`Installing packages. ${FIRST_INSTALL_HINT}`);
  run(
    'npm',
    ['ci', '--no-audit', '--no-fund', '--loglevel=error'],
    'The packages could not be installed. Is the npm registry reachable?',
  );
  writeFileSync(stamp, lock);
}

/** The client is generated code, never committed: made anew when the schema is newer. */
function generateClient() {
  const schema = hashOf(['prisma/schema.prisma', 'package-lock.json']);
  const folder = path.join(root, 'packages/database/src/generated');
  const stamp = path.join(folder, '.schema-hash');
  if (existsSync(stamp) && readFileSync(stamp, 'utf8') === schema) return;
  say('Generating the database client');
  const node = path.join(root, 'node_modules', '.bin', process.platform === 'win32' ? 'node.cmd' : 'node');
  mkdirSync(folder, { recursive: true });
  // Generating needs no schema engine; any executable keeps Prisma from trying to download one.
  const prisma = path.join(root, 'node_modules', 'prisma', 'build', 'index.js');
  run(node, [prisma, 'generate'], 'The database client could not be generated.', {
    PRISMA_SCHEMA_ENGINE_BINARY: process.execPath,
  });
  writeFileSync(stamp, schema);
}

function run(command, args, complaint, extraEnv = {}) {
  const quiet = command !== 'npm';
  const done = spawnSync(command, args, {
    cwd: root,
    stdio: quiet ? ['ignore', 'pipe', 'pipe'] : ['ignore', 'inherit', 'inherit'],
    env: { ...quietEnv, PRISMA_HIDE_UPDATE_MESSAGE: '1', ...extraEnv },
    shell: process.platform === 'win32',
  });
  if (done.status === 0) return;
  if (quiet) process.stderr.write(`${done.stdout ?? ''}${done.stderr ?? ''}`);
  fail(complaint);
}

function hashOf(files) {
  const hash = createHash('sha256');
  for (const file of files) hash.update(readFileSync(path.join(root, file)));
  return hash.digest('hex');
}

function say(line) {
  process.stdout.write(`${line}\n`);
}

function fail(line) {
  process.stderr.write(`${line}\n`);
  process.exit(1);
}
