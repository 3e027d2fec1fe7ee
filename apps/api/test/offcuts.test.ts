// Stock moves when a sheet is reported cut, never before, and comes back when that is undone.
import { randomUUID } from 'node:crypto';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { boxedJob } from './support/boxed-job.ts';
import { shopErrorOf, startTestApi, type TestApi, type TestPerson } from './support/harness.ts';

let api: TestApi;
let owner: TestPerson;
let technician: TestPerson;

beforeAll(async () => {
  api = await startTestApi();
  owner = await api.owner();
  technician = await api.member(owner, 'technician');
});
afterAll(() => api.close());

const length = (mm: number) => ({ mm, typed: String(mm), unit: 'mm' as const });
const stockOf = async (id: string) => (await owner.api.part.sheet.read.query({ id })).stockQuantity;

type Piece = {
  readonly id: string;
  readonly partId: string;
  readonly lengthMm: number;
  readonly widthMm: number;
};

/** An issued cutting sheet, laid out on this offcut of the rack if one is named. */
async function issuedCut(on: Piece | null = null) {
  const { jobId, board } = await boxedJob(owner, {
    issued: true,
    ...(on === null ? {} : { boardId: on.partId }),
  });
  const { input } = await owner.api.sheet.cutting.read.query({ jobId });
  const offcuts =
    on === null
      ? []
      : [
          {
            key: 'rack',
            boardId: board.id,
            length: length(on.lengthMm),
            width: length(on.widthMm),
            count: 1,
            offcutId: on.id,
          },
        ];
  const saved = await owner.api.sheet.cutting.save.mutate({
    jobId,
    version: 0,
    input: { ...input, offcuts },
  });
  const issued = await owner.api.sheet.cutting.issue.mutate({ jobId, version: saved.version });
  return { jobId, board, issueId: issued.issue?.id ?? '', result: issued.issue?.result };
}

const report = (person: TestPerson, at: { jobId: string; issueId: string }, key: string = randomUUID()) =>
  person.api.cutReport.report.mutate({ key, jobId: at.jobId, issueId: at.issueId });

describe('reporting a cut', () => {
  it('takes the sheet out of stock and puts the leftovers into the rack, once', async () => {
    const cut = await issuedCut();
    expect(await owner.api.offcut.list.query({ partIds: [cut.board.id] })).toEqual([]);
    expect(await stockOf(cut.board.id)).toBe(2);

    const key = randomUUID();
    const [view] = await report(technician, cut, key);
    await report(technician, cut, key);
    expect(view).toMatchObject({ taken: [{ partId: cut.board.id, count: 1 }], usedNumbers: [] });
    expect(await stockOf(cut.board.id)).toBe(1);
    const racked = await technician.api.offcut.list.query({ partIds: [cut.board.id] });
    const wanted = (cut.result?.boards ?? []).flatMap(({ layout }) =>
      layout.sheets.flatMap(({ offcuts }) => offcuts),
    );
    expect(racked.length).toBe(wanted.length);
    expect(racked.length).toBeGreaterThan(0);
    expect(new Set(racked.map(({ number }) => number)).size).toBe(racked.length);
    expect(racked.map(({ lengthMm }) => lengthMm).toSorted()).toEqual(
      wanted.map(({ lengthMm }) => lengthMm).toSorted(),
    );

    expect(await shopErrorOf(report(technician, cut))).toMatchObject({ code: 'NOT_ACCEPTED' });
  });

  it('is undone whole: the sheet is back in stock, the rack as it was', async () => {
    const cut = await issuedCut();
    const [view] = await report(owner, cut);
    const left = await owner.api.cutReport.undo.mutate({ jobId: cut.jobId, reportId: view?.id ?? '' });
    expect(left).toEqual([]);
    expect(await stockOf(cut.board.id)).toBe(2);
    expect(await owner.api.offcut.list.query({ partIds: [cut.board.id] })).toEqual([]);
    // It may be reported again.
    expect(await report(owner, cut)).toHaveLength(1);
  });

  it('uses an offcut up once, and says which one is gone', async () => {
    const { board } = await issuedCut();
    const offcut = await technician.api.offcut.add.mutate({
      key: randomUUID(),
      offcut: { partId: board.id, lengthMm: 2_000, widthMm: 1_000, place: 'rack 2' },
    });
    const first = await issuedCut(offcut);
    const second = await issuedCut(offcut);
    const [view] = await report(owner, first);
    expect(view?.usedNumbers).toEqual([offcut.number]);
    const error = await shopErrorOf(report(owner, second));
    expect(error).toMatchObject({ code: 'NOT_ACCEPTED' });
    expect(error.message).toContain(`Offcut ${offcut.number}`);

    await owner.api.cutReport.undo.mutate({ jobId: first.jobId, reportId: view?.id ?? '' });
    expect((await report(owner, second))[0]?.usedNumbers).toEqual([offcut.number]);
  });

  it('is not undone while a leftover has been used in another job', async () => {
    const first = await issuedCut();
    const [view] = await report(owner, first);
    const [piece] = view?.left ?? [];
    if (piece === undefined) throw new Error('nothing was left');
    const second = await issuedCut(piece);
    const [later] = await report(owner, second);
    expect(later?.usedNumbers).toEqual([piece.number]);
    const error = await shopErrorOf(
      owner.api.cutReport.undo.mutate({ jobId: first.jobId, reportId: view?.id ?? '' }),
    );
    expect(error.message).toContain(String(piece.number));
  });

  it('is kept from those who do not stand at the saw, and from another shop', async () => {
    const cut = await issuedCut();
    const office = await api.member(owner, 'office');
    expect(await shopErrorOf(report(office, cut))).toMatchObject({ code: 'NOT_ALLOWED' });
    const stranger = await api.owner('Harbour Lane Audio');
    expect(await shopErrorOf(report(stranger, cut))).toMatchObject({ code: 'NOT_FOUND' });
    expect(await stranger.api.offcut.list.query({ partIds: [] })).toEqual([]);
  });
});

describe('the rack', () => {
  it('takes only boards, and throws a piece away once', async () => {
    const { board } = await boxedJob(owner, { issued: false });
    const drivers = await owner.api.part.driver.list.query({});
    const wrong = owner.api.offcut.add.mutate({
      key: randomUUID(),
      offcut: { partId: drivers.rows[0]?.id ?? '', lengthMm: 600, widthMm: 300, place: '' },
    });
    expect(await shopErrorOf(wrong)).toMatchObject({ code: 'NOT_ACCEPTED' });
    const piece = await owner.api.offcut.add.mutate({
      key: randomUUID(),
      offcut: { partId: board.id, lengthMm: 600, widthMm: 300, place: 'by the door' },
    });
    expect(piece).toMatchObject({ thicknessMm: 18, place: 'by the door', fromJobNumber: null });
    await technician.api.offcut.throwAway.mutate({ id: piece.id, version: piece.version });
    expect(await owner.api.offcut.list.query({ partIds: [board.id] })).toEqual([]);
    const again = owner.api.offcut.throwAway.mutate({ id: piece.id, version: piece.version });
    expect(await shopErrorOf(again)).toMatchObject({ code: 'NOT_ACCEPTED' });
  });
});
