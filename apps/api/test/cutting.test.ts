// From a drawn box to an issued cutting sheet, its paper, and what a measured board does to it.
import { randomUUID } from 'node:crypto';
import { strFromU8, unzipSync } from 'fflate';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { boardFigures, boxedJob } from './support/boxed-job.ts';
import { shopErrorOf, startTestApi, type TestApi, type TestPerson } from './support/harness.ts';

let api: TestApi;
let owner: TestPerson;

beforeAll(async () => {
  api = await startTestApi();
  owner = await api.owner();
});
afterAll(() => api.close());

const paper = (jobId: string, person: TestPerson = owner) =>
  api.app.inject({
    method: 'GET',
    url: `/api/papers/cut-sheet/${jobId}?paper=A4`,
    headers: { cookie: person.cookies },
  });

describe('the cutting sheet', () => {
  it('lays the box out on the board of the catalogue and is issued as it was worked out', async () => {
    const { jobId, board } = await boxedJob(owner, { issued: true });
    const read = await owner.api.sheet.cutting.read.query({ jobId });
    expect(read.facts).toEqual({
      boards: [{ id: board.id, name: 'MDF 18', figures: boardFigures }],
      saw: { kerfMm: 3.2, trimMm: 6, bladeMaxTiltDeg: 45 },
    });
    const saved = await owner.api.sheet.cutting.save.mutate({ jobId, version: 0, input: read.input });
    const { issue, outcome } = await owner.api.sheet.cutting.issue.mutate({ jobId, version: saved.version });
    expect(issue?.revision).toBe('A');
    expect(issue?.result).toEqual(outcome.state === 'ready' ? outcome.result : null);
    expect(issue?.result.sheetsUsed).toEqual([{ partId: board.id, name: 'MDF 18', count: 1 }]);
    expect(issue?.result.isDraft).toBe(true);
    expect(issue?.result.pieces).toBe(6);
  });

  it('repeats the layout that a search in the browser found from its seed', async () => {
    const { jobId, board } = await boxedJob(owner, { issued: true });
    const read = await owner.api.sheet.cutting.read.query({ jobId });
    const searches = [{ boardId: board.id, seed: 17, iterations: 2_000 }];
    const first = await owner.api.sheet.cutting.save.mutate({
      jobId,
      version: 0,
      input: { ...read.input, searches },
    });
    const again = await owner.api.sheet.cutting.read.query({ jobId });
    expect(again.outcome).toEqual(first.outcome);
    expect(again.outcome.state === 'ready' ? again.outcome.result.boards[0]?.search : null).toEqual({
      seed: 17,
      iterations: 2_000,
    });
  });

  it('says that the box must be issued again once the real sheet has been measured', async () => {
    const { jobId, board } = await boxedJob(owner, { issued: true });
    const read = await owner.api.sheet.cutting.read.query({ jobId });
    expect(read.outcome).toMatchObject({
      state: 'ready',
      result: { notes: [{ code: 'thickness-nominal', boardId: board.id, thicknessMm: 18 }, {}] },
    });
    const technician = await api.member(owner, 'technician');
    const reading = { id: board.id, version: board.version, measuredThicknessMm: 17.8 };
    expect(await technician.api.part.sheet.measure.mutate(reading)).toMatchObject({
      figures: { measuredThicknessMm: 17.8 },
      buyPriceMinor: null,
    });
    const measured = await owner.api.sheet.cutting.read.query({ jobId });
    expect(measured.outcome).toMatchObject({
      state: 'ready',
      result: { isDraft: true, notes: [{ code: 'thickness-moved', drawnMm: 18, measuredMm: 17.8 }, {}] },
    });
    const box = await owner.api.sheet.box.read.query({ jobId });
    await owner.api.sheet.box.issue.mutate({ jobId, version: box.version });
    const settled = await owner.api.sheet.cutting.read.query({ jobId });
    expect(settled.outcome).toMatchObject({
      state: 'ready',
      result: { isDraft: false, boards: [{ thicknessMm: 17.8, isMeasured: true }] },
    });
  });

  it('takes a reading from those at the saw: near the nominal, once, and nothing else of the board', async () => {
    const { board } = await boxedJob(owner, { issued: false });
    const technician = await api.member(owner, 'technician');
    const office = await api.member(owner, 'office');
    const measure = (person: TestPerson, measuredThicknessMm: number) =>
      person.api.part.sheet.measure.mutate({ id: board.id, version: board.version, measuredThicknessMm });
    expect(await shopErrorOf(measure(technician, 1.78))).toMatchObject({
      code: 'NOT_ACCEPTED',
      fields: [{ path: 'measuredThicknessMm' }],
    });
    expect(await shopErrorOf(measure(office, 17.8))).toMatchObject({ code: 'NOT_ALLOWED' });
    await measure(technician, 18.2);
    expect(await shopErrorOf(measure(owner, 17.9))).toMatchObject({
      code: 'CHANGED_MEANWHILE',
      conflict: { differences: [{ field: 'measuredThicknessMm', yours: 17.9, theirs: 18.2 }] },
    });
    expect(await owner.api.part.sheet.read.query({ id: board.id })).toMatchObject({
      name: 'MDF 18',
      buyPriceMinor: 4_321,
      stockQuantity: 2,
      figures: { measuredThicknessMm: 18.2, nominalThicknessMm: 18 },
    });
  });

  it('waits for the box to be issued', async () => {
    const { jobId } = await boxedJob(owner, { issued: false });
    const read = await owner.api.sheet.cutting.read.query({ jobId });
    expect(read.draftUpstream).toEqual(['box']);
    expect(read.outcome.state).toBe('ready');
    const saved = await owner.api.sheet.cutting.save.mutate({ jobId, version: 0, input: read.input });
    const refused = await shopErrorOf(
      owner.api.sheet.cutting.issue.mutate({ jobId, version: saved.version }),
    );
    expect(refused).toMatchObject({ code: 'UPSTREAM_NOT_ISSUED', fields: [{ path: 'box' }] });
  });

  it('is read by a technician, who may not change it and sees no prices', async () => {
    const technician = await api.member(owner, 'technician');
    const { jobId } = await boxedJob(owner, { issued: true });
    const read = await technician.api.sheet.cutting.read.query({ jobId });
    expect(read.outcome.state).toBe('ready');
    expect(JSON.stringify(read)).not.toContain('4321');
    expect(JSON.stringify(read)).not.toContain('PriceMinor');
    const refused = await shopErrorOf(
      technician.api.sheet.cutting.save.mutate({ jobId, version: 0, input: read.input }),
    );
    expect(refused.code).toBe('NOT_ALLOWED');
  });
});

describe('the cut sheet on paper', () => {
  it('is a PDF named for the draft, then for the issued revision', async () => {
    const { jobId } = await boxedJob(owner, { issued: true });
    const draft = await paper(jobId);
    expect(draft.statusCode).toBe(200);
    expect(draft.headers['content-type']).toBe('application/pdf');
    expect(draft.headers['content-disposition']).toMatch(/cut-sheet-\d+-draft\.pdf/);
    expect(draft.rawPayload.subarray(0, 5).toString('latin1')).toBe('%PDF-');
    const read = await owner.api.sheet.cutting.read.query({ jobId });
    const saved = await owner.api.sheet.cutting.save.mutate({ jobId, version: 0, input: read.input });
    await owner.api.sheet.cutting.issue.mutate({ jobId, version: saved.version });
    const issued = await paper(jobId, await api.member(owner, 'technician'));
    expect(issued.headers['content-disposition']).toMatch(/cut-sheet-\d+-rev-A\.pdf/);
  });

  it('says what is missing where no box is drawn yet', async () => {
    const customer = await owner.api.customer.create.mutate({
      key: randomUUID(),
      input: { name: 'L. Brandt', phone: '', email: '', address: '', notes: '' },
    });
    const job = await owner.api.job.open.mutate({
      key: randomUUID(),
      job: { title: 'Nothing drawn', customerId: customer.id },
    });
    const answer = await paper(job.id);
    expect(answer.statusCode).toBe(412);
    expect(answer.json()).toMatchObject({ code: 'SHEET_INCOMPLETE' });
  });

  it('comes as files for machines too: a DXF and an SVG a panel, a DXF a sheet, the list', async () => {
    const { jobId } = await boxedJob(owner, { issued: true });
    const fetched = (person: TestPerson) =>
      api.app.inject({
        method: 'GET',
        url: `/api/papers/cut-files/${jobId}`,
        headers: { cookie: person.cookies },
      });
    const answer = await fetched(owner);
    expect(answer.statusCode).toBe(200);
    expect(answer.headers['content-type']).toBe('application/zip');
    const names = Object.keys(unzipSync(answer.rawPayload)).map((name) => name.split('/').slice(1).join('/'));
    expect(names.filter((name) => name.startsWith('parts/'))).toHaveLength(12);
    expect(names.filter((name) => name.startsWith('sheets/'))).toHaveLength(1);
    expect(names).toContain('cut-list.csv');
    const [list] = Object.entries(unzipSync(answer.rawPayload)).filter(([name]) => name.endsWith('.csv'));
    expect(strFromU8(list?.[1] ?? new Uint8Array()).split('\r\n')).toHaveLength(1 + 6 + 1);
    expect((await fetched(await api.owner('Tern Street Audio'))).statusCode).toBe(404);
  });

  it('shows nothing of another shop', async () => {
    const { jobId } = await boxedJob(owner, { issued: true });
    const stranger = await api.owner('Elsewhere Audio');
    expect((await paper(jobId, stranger)).statusCode).toBe(404);
    const unsigned = await api.app.inject({ method: 'GET', url: `/api/papers/cut-sheet/${jobId}` });
    expect(unsigned.statusCode).toBe(401);
  });
});
