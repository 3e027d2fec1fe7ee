// Starts one process: the API (with or without the worker beside it), or with the argument `worker` only the worker.
import { buildApp } from './app.ts';
import { buildDeps } from './build-deps.ts';
import { readEnv } from './env.ts';
import { startWorker } from './worker.ts';

const workerOnly = process.argv[2] === 'worker';
const env = readEnv(process.env);
const { deps, close } = await buildDeps(env, { superviseQueue: workerOnly || env.WITH_WORKER });

if (workerOnly || env.WITH_WORKER) await startWorker(deps);
const app = workerOnly ? null : await buildApp(deps);
if (app !== null) {
  const address = await app.listen({ host: env.API_HOST, port: env.API_PORT });
  deps.log.info({ address }, 'api ready');
}
process.send?.('ready'); // the starter waits for this before it opens the front door

/** Running answers get this long to end; a connection that never asked anything would be waited for without end. */
const CLOSE_WITHIN_MS = 10_000;

let stopping = false;
async function stop(): Promise<void> {
  if (stopping) process.exit(1); // a second signal means now
  stopping = true;
  const cut = setTimeout(() => app?.server.closeAllConnections(), CLOSE_WITHIN_MS);
  await app?.close();
  clearTimeout(cut);
  await close();
  process.exit(0);
}
process.on('SIGTERM', () => void stop());
process.on('SIGINT', () => void stop());
process.on('disconnect', () => void stop()); // the starter is gone
