// Every procedure × every kind of caller, and every procedure that takes an id × another shop's owner. A procedure
// that is added without saying who may call it fails here, and so does one whose ids lead into another shop.
import { may, PERMISSIONS, type Permission, ROLES, type Role } from '@gusset/contracts/access';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { z } from 'zod';
import { appRouter } from '../src/trpc/app-router.ts';
import { startTestApi, type TestApi, type TestPerson } from './support/harness.ts';
import { type MatrixShop, matrixShop } from './support/matrix-shop.ts';
import { idFieldsOf, sampleInput } from './support/sample-input.ts';

type Caller = Role | 'stranger' | 'nobody';
const CALLERS: readonly Caller[] = [...ROLES, 'stranger', 'nobody'];

/** Would end the sign-in or the shop that the other tests stand on; they have tests of their own. */
const ENDS_THE_CALLER = new Set(['account.endOtherSessions']);

/** What tRPC keeps about a procedure; its types show the routers nested, at run time the list is flat. */
const defSchema = z.object({
  type: z.enum(['query', 'mutation']),
  meta: z.object({ access: z.string() }).optional(),
  inputs: z.array(z.unknown()),
});

const procedures = Object.entries(appRouter._def.procedures)
  .map(([path, procedure]) => ({ path, def: defSchema.parse(Reflect.get(procedure, '_def')) }))
  .toSorted((a, b) => a.path.localeCompare(b.path));

let api: TestApi;
let shop: MatrixShop;
let twin: TestPerson;
const cookies = new Map<Caller, string>();

beforeAll(async () => {
  api = await startTestApi();
  const owner = await api.owner();
  cookies.set('owner', owner.cookies);
  for (const role of ROLES) {
    if (role !== 'owner') cookies.set(role, (await api.member(owner, role)).cookies);
  }
  cookies.set('stranger', (await api.signUp('Stranger')).cookies);
  cookies.set('nobody', '');
  shop = await matrixShop(api, owner);
  twin = await api.owner('Harbour Lane Audio');
});
afterAll(() => api.close());

/** Requests are counted by address; each few hundred come from another one, as they would. */
let calls = 0;
const nextAddress = () => {
  calls += 1;
  return `10.0.0.${1 + Math.floor(calls / 400)}`;
};

async function call(path: string, type: string, input: unknown, cookie: string): Promise<string> {
  const remoteAddress = nextAddress();
  const headers = { cookie, origin: 'http://localhost:4300', 'content-type': 'application/json' };
  const answer =
    type === 'mutation'
      ? await api.app.inject({
          method: 'POST',
          remoteAddress,
          url: `/api/trpc/${path}`,
          headers,
          payload: JSON.stringify(input),
        })
      : await api.app.inject({
          method: 'GET',
          remoteAddress,
          url: `/api/trpc/${path}?input=${encodeURIComponent(JSON.stringify(input))}`,
          headers,
        });
  if (answer.statusCode === 200) return isEmpty(answer.json()?.result?.data) ? 'NOTHING' : 'ANSWERED';
  const code: unknown = answer.json()?.error?.data?.shop?.code;
  if (typeof code !== 'string') throw new Error(`${path}: no error code in ${answer.body.slice(0, 200)}`);
  return code;
}

function isAllowed(access: string, caller: Caller): boolean {
  if (access === 'anyone') return true;
  if (access === 'signed-in') return caller !== 'nobody';
  return caller !== 'nobody' && caller !== 'stranger' && may(caller, access as Permission); // checked just above its use
}

describe('every procedure', () => {
  it('says who may call it', () => {
    const known = new Set<string>(['anyone', 'signed-in', ...Object.keys(PERMISSIONS)]);
    const silent = procedures.filter(({ def }) => !known.has(def.meta?.access ?? ''));
    expect(silent.map(({ path }) => path)).toEqual([]);
    expect(procedures.length).toBeGreaterThan(80);
  });

  it.each(CALLERS)(
    'answers %s exactly where the table of rights allows it',
    async (caller) => {
      const wrong: string[] = [];
      for (const { path, def } of procedures) {
        if (ENDS_THE_CALLER.has(path)) continue;
        const access = def.meta?.access ?? '';
        // An input that no procedure takes: who may call is told by the refusal, and nothing is changed.
        const code = await call(path, def.type, { nonsense: true }, cookies.get(caller) ?? '');
        const refusal = caller === 'nobody' ? 'SIGN_IN_FIRST' : 'NOT_ALLOWED';
        const isRefused = code === 'SIGN_IN_FIRST' || code === 'NOT_ALLOWED';
        if (isAllowed(access, caller) ? isRefused : code !== refusal)
          wrong.push(`${path} (${access}): ${code}`);
      }
      expect(wrong).toEqual([]);
    },
    90_000,
  );
});

/** How another shop's id may end: not there, not accepted as a reference, unknown to an engine, an empty list. */
const LEADS_NOWHERE = new Set(['NOT_FOUND', 'NOT_ACCEPTED', 'REFUSED_BY_ENGINE', 'NOTHING']);

/** Names something besides its ids that this shop does not have: a line of an issued parts sheet. */
const NEEDS_MORE_THAN_IDS = new Set(['delivery.set']);

describe('an id of another shop', () => {
  const withIds = procedures.filter(
    ({ def }) => def.meta?.access !== 'anyone' && def.inputs.some((input) => idFieldsOf(input).length > 0),
  );

  it('leads nowhere', async () => {
    const before = await shop.fingerprint();
    const leaks: string[] = [];
    for (const { path, def } of withIds) {
      const { input } = sampleInput(path, def.inputs, shop.ids);
      const code = await call(path, def.type, input, twin.cookies);
      if (!LEADS_NOWHERE.has(code)) leaks.push(`${path}: ${code}`);
    }
    expect(leaks).toEqual([]);
    expect(await shop.fingerprint()).toEqual(before);
  });

  it('is one that its own shop reaches, so that the test above means something', async () => {
    const wrong: string[] = [];
    let reached = 0;
    for (const { path, def } of withIds) {
      const { input, isWhole } = sampleInput(path, def.inputs, shop.ids);
      const code = await call(path, def.type, input, cookies.get('owner') ?? '');
      if (isWhole && code === 'NOT_FOUND' && !NEEDS_MORE_THAN_IDS.has(path)) wrong.push(path);
      if (code !== 'NOT_FOUND' && code !== 'NOT_ACCEPTED') reached += 1;
    }
    expect(wrong).toEqual([]);
    expect(reached).toBeGreaterThan(40);
  });
});

/** A list in which nothing is. */
function isEmpty(data: unknown): boolean {
  if (Array.isArray(data)) return data.length === 0;
  return typeof data === 'object' && data !== null && 'rows' in data && isEmpty(data.rows);
}
