// JSON lines. No bodies, no names, no addresses: ids, outcomes and durations.
import { type Logger, pino } from 'pino';

export type Log = Logger;

export function makeLog(level: string): Log {
  return pino({
    level,
    timestamp: pino.stdTimeFunctions.isoTime,
    base: null,
    redact: { paths: ['req.headers', '*.password', '*.token', '*.email'], remove: true },
  });
}
