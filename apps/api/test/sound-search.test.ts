// Searching the catalogue for a design: its own shop's drivers only, costs for those who see costs, a stop that stops.
import { randomUUID } from 'node:crypto';
import type { DriverSearchInput } from '@gusset/contracts/acoustics';
import { driverFiguresSchema } from '@gusset/contracts/records';
import { createTRPCClient, httpBatchStreamLink } from '@trpc/client';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { DriverSearchLine } from '../src/sound-search/sound-search.service.ts';
import type { AppRouter } from '../src/trpc/app-router.ts';
import { PUBLIC_URL, shopErrorOf, startTestApi, type TestApi, type TestPerson } from './support/harness.ts';

type Answer = Extract<DriverSearchLine, { kind: 'answer' }>;

let api: TestApi;
let address: string;
let owner: TestPerson;
let technician: TestPerson;
let neighbour: TestPerson;

const BRIEF: DriverSearchInput['brief'] = {
  aim: 'deep',
  kinds: ['closed'],
  mostDrivers: 1,
  net: { leastLitres: 20, mostLitres: 40 },
  power: [
    { loadOhm: 4, watts: 300 },
    { loadOhm: 2, watts: 500 },
  ],
  depthMm: null,
  budgetMinor: null,
  leastOutputDb: null,
  cabin: null,
  losses: { fillFactor: 1, ql: 15, qa: null },
  radiators: [],
};

beforeAll(async () => {
  api = await startTestApi();
  address = await api.app.listen({ host: '127.0.0.1', port: 0 });
  owner = await api.owner();
  technician = await api.member(owner, 'technician');
  neighbour = await api.owner('Harbour Lane Audio');
  await addDriver(owner, { name: 'Q-10', buyPriceMinor: 14_000, stockQuantity: 2, xmaxMm: 11 });
  await addDriver(owner, { name: 'Q-12', buyPriceMinor: 26_000, stockQuantity: 0, xmaxMm: 14 });
  await addDriver(owner, { name: 'No travel stated', buyPriceMinor: 9_000, stockQuantity: 1, xmaxMm: null });
  await addDriver(neighbour, { name: 'Theirs', buyPriceMinor: 1_000, stockQuantity: 9, xmaxMm: 25 });
});
afterAll(() => {
  api.app.server.closeAllConnections(); // the client keeps its line after the last answer; nobody waits for that here
  return api.close();
});

type Row = {
  readonly name: string;
  readonly buyPriceMinor: number;
  readonly stockQuantity: number;
  readonly xmaxMm: number | null;
};

async function addDriver(person: TestPerson, { xmaxMm, ...row }: Row): Promise<void> {
  await person.api.part.driver.create.mutate({
    key: randomUUID(),
    input: {
      kind: 'driver',
      maker: 'Quince',
      code: '',
      unit: 'each',
      supplierId: null,
      sellPriceMinor: row.buyPriceMinor * 2,
      leadDays: null,
      notes: '',
      ...row,
      figures: driverFiguresSchema.parse({
        dataSheet: {
          fsHz: 29.5,
          qms: 4.6,
          qes: 0.52,
          vasLitres: 48,
          sdCm2: 340,
          reOhm: 3.6,
          leMh: 0,
          xmaxMm,
          peWatts: 300,
          displacementLitres: 2,
        },
        overallDiaMm: 269,
        cutoutDiaMm: 236,
        mountingDepthMm: 141,
      }),
    },
  });
}

/** As the browser does it: one answer that comes in lines. */
async function search(
  person: TestPerson,
  input: Partial<DriverSearchInput>,
  signal?: AbortSignal,
): Promise<AsyncIterable<DriverSearchLine>> {
  const client = createTRPCClient<AppRouter>({
    links: [
      httpBatchStreamLink({
        url: `${address}/api/trpc`,
        headers: { cookie: person.cookies, origin: PUBLIC_URL },
      }),
    ],
  });
  const asked = { brief: BRIEF, inStockOnly: false, ...input };
  return client.soundSearch.run.mutate(asked, signal === undefined ? {} : { signal });
}

async function answerOf(person: TestPerson, input: Partial<DriverSearchInput> = {}): Promise<Answer> {
  let answer: Answer | null = null;
  for await (const line of await search(person, input)) if (line.kind === 'answer') answer = line;
  if (answer === null) throw new Error('the search ended without an answer');
  return answer;
}

describe('a search through the catalogue', () => {
  it('names the winners of the own shop and counts what was not tried', async () => {
    const answer = await answerOf(owner);
    expect(answer.ranked.map(({ driverName }) => driverName).toSorted()).toEqual([
      'Quince Q-10',
      'Quince Q-12',
    ]);
    expect(answer.front.length).toBeGreaterThan(0);
    expect(answer.frontCount).toBe(answer.front.length);
    expect(answer.drivers).toBe(3);
    expect(answer.leftOut).toMatchObject({ limitsUnknown: 1, sheetsIncomplete: 0 });
    expect(answer.counts.considered).toBe(answer.counts.designs);
    const [first] = answer.ranked;
    expect(first?.lowCornerHz).toBeGreaterThan(20);
    expect(first?.lowCornerHz).toBeLessThan(60);
    expect(first?.costMinor).toBe(first?.driverName === 'Quince Q-10' ? 14_000 : 26_000);
  });

  it('shows a neighbour only what is theirs', async () => {
    const answer = await answerOf(neighbour);
    expect(new Set([...answer.ranked, ...answer.front].map(({ driverName }) => driverName))).toEqual(
      new Set(['Quince Theirs']),
    );
  });

  it('keeps costs from a technician, and a budget with which they could be found out', async () => {
    const answer = await answerOf(technician);
    const designs = [...answer.ranked, ...answer.front];
    expect(designs.length).toBeGreaterThan(1);
    expect(designs.every(({ costMinor }) => costMinor === null)).toBe(true);
    const asked = answerOf(technician, { brief: { ...BRIEF, budgetMinor: 20_000 } });
    expect(await shopErrorOf(asked)).toMatchObject({
      code: 'NOT_ACCEPTED',
      fields: [{ path: 'brief.budgetMinor' }],
    });
  });

  it('holds to the budget and to what lies on the shelf', async () => {
    const within = await answerOf(owner, { brief: { ...BRIEF, budgetMinor: 20_000 } });
    expect(within.ranked.map(({ driverName }) => driverName)).toEqual(['Quince Q-10']);
    expect(within.leftOut.overBudget).toBe(1);
    const onShelf = await answerOf(owner, { inStockOnly: true });
    expect(onShelf.ranked.map(({ driverName, inStock }) => [driverName, inStock])).toEqual([
      ['Quince Q-10', 2],
    ]);
    expect(onShelf.leftOut.noneAvailable).toBe(1);
  });

  it('says at its field what cannot be', async () => {
    const net = { leastLitres: 50, mostLitres: 20 };
    expect(await shopErrorOf(answerOf(owner, { brief: { ...BRIEF, net } }))).toMatchObject({
      code: 'NOT_ACCEPTED',
      fields: [{ path: 'brief.net.mostLitres' }],
    });
    const cabin = { kind: 'shelf' as const, longestM: 3, upperQ: 0.7, lowerHz: 90, lowerQ: 0.7 };
    expect(await shopErrorOf(answerOf(owner, { brief: { ...BRIEF, cabin } }))).toMatchObject({
      code: 'REFUSED_BY_ENGINE',
      fields: [{ path: 'brief.cabin.lowerHz' }],
    });
  });

  it('asks whatever stands between to pass its lines on at once', async () => {
    const answer = await fetch(`${address}/api/trpc/soundSearch.run?batch=1`, {
      method: 'POST',
      headers: {
        cookie: owner.cookies,
        origin: PUBLIC_URL,
        'content-type': 'application/json',
        'trpc-accept': 'application/jsonl',
      },
      body: JSON.stringify({ 0: { brief: BRIEF, inStockOnly: false } }),
    });
    expect(answer.headers.get('cache-control')).toBe('no-store, no-transform');
    expect((await answer.text()).trim().split('\n').length).toBeGreaterThan(2);
  });

  it('tells how far it is while it runs, and ends when nobody listens any more', async () => {
    const long: DriverSearchInput['brief'] = {
      ...BRIEF,
      aim: 'smooth',
      kinds: ['closed', 'vented', 'single-tuned-bandpass'],
      mostDrivers: 8,
      net: { leastLitres: 10, mostLitres: 90 },
      power: [{ loadOhm: 0.25, watts: 300 }],
    };
    for (let i = 0; i < 40; i++) {
      const buyPriceMinor = 20_000 + i;
      await addDriver(owner, { name: `L-${i}`, buyPriceMinor, stockQuantity: 1, xmaxMm: 8 + i / 10 });
    }
    const stop = new AbortController();
    const considered: number[] = [];
    const listen = async () => {
      for await (const line of await search(owner, { brief: long }, stop.signal)) {
        if (line.kind === 'answer') throw new Error('it was to be stopped long before');
        considered.push(line.counts.considered);
        expect(line.counts.designs).toBeGreaterThan(100_000);
        if (considered.length === 3) stop.abort();
      }
    };
    await expect(listen()).rejects.toThrow(/abort/i);
    expect(considered.length).toBeGreaterThanOrEqual(3);
    expect(considered).toEqual(considered.toSorted((a, b) => a - b));
    // The thread is free: with one for all long work, this would wait for the first search otherwise.
    const started = performance.now();
    await answerOf(neighbour);
    expect(performance.now() - started).toBeLessThan(15_000);
  }, 60_000);
});
