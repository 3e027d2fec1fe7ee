import { z } from 'zod';

const LARGEST_PORT = 65_535;

/** Origins only: `http://127.0.0.1:4001`. A path would be lost when a request is handed on. */
const originSchema = z
  .url({ protocol: /^https?$/, error: 'each API origin is a web address such as http://127.0.0.1:4001' })
  .transform((text) => new URL(text).origin);

const flagSchema = z
  .enum(['0', '1'])
  .default('0')
  .transform((flag) => flag === '1');

const envSchema = z.object({
  PORT: z.coerce.number().int().min(0).max(LARGEST_PORT).default(4300),
  HOST: z.string().min(1).default('127.0.0.1'),
  API_ORIGINS: z
    .string()
    .default('http://127.0.0.1:4310')
    .transform((list) => list.split(',').map((origin) => origin.trim()))
    .pipe(z.array(originSchema).min(1)),
  GUSSET_DATA_DIR: z.string().min(1).default('.data'),
  TLS_CERT_FILE: z.string().min(1).optional(),
  TLS_KEY_FILE: z.string().min(1).optional(),
  GUSSET_LOCAL_CERT: flagSchema,
  /** 1 behind a load balancer that sets X-Forwarded-*: its words about address and protocol are believed. */
  TRUST_PROXY: flagSchema,
});

export type FrontDoorEnv = {
  readonly port: number;
  readonly host: string;
  readonly apiOrigins: readonly string[];
  readonly dataDir: string;
  readonly tlsFiles: { readonly certFile: string; readonly keyFile: string } | null;
  readonly localCertificate: boolean;
  readonly trustProxy: boolean;
};

/** Reads the front door's settings; throws with one line a wrong setting, since nothing can start without them. */
export function readFrontDoorEnv(source: Readonly<Record<string, string | undefined>>): FrontDoorEnv {
  const parsed = envSchema.safeParse(source);
  if (!parsed.success) {
    const lines = parsed.error.issues.map((issue) => `${issue.path.join('.')}: ${issue.message}`);
    throw new Error(`The front door's settings can't be used.\n${lines.join('\n')}`);
  }
  const env = parsed.data;
  if ((env.TLS_CERT_FILE === undefined) !== (env.TLS_KEY_FILE === undefined)) {
    throw new Error('Set both TLS_CERT_FILE and TLS_KEY_FILE, or neither.');
  }
  const tlsFiles =
    env.TLS_CERT_FILE && env.TLS_KEY_FILE ? { certFile: env.TLS_CERT_FILE, keyFile: env.TLS_KEY_FILE } : null;
  return {
    port: env.PORT,
    host: env.HOST,
    apiOrigins: env.API_ORIGINS,
    dataDir: env.GUSSET_DATA_DIR,
    tlsFiles,
    localCertificate: env.GUSSET_LOCAL_CERT,
    trustProxy: env.TRUST_PROXY,
  };
}
