// The mock-up at full size: for whoever may read the box, before it is issued.
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { boxedJob } from './support/boxed-job.ts';
import { startTestApi, type TestApi, type TestPerson } from './support/harness.ts';

let api: TestApi;
let owner: TestPerson;

beforeAll(async () => {
  api = await startTestApi();
  owner = await api.owner();
});
afterAll(() => api.close());

const mockUp = (jobId: string, person: TestPerson) =>
  api.app.inject({
    method: 'GET',
    url: `/api/papers/mock-up/${jobId}?paper=A4`,
    headers: { cookie: person.cookies },
  });

describe('the mock-up', () => {
  it('is printed from a box that is still a draft, and named by its profile', async () => {
    const { jobId } = await boxedJob(owner, { issued: false });
    const answer = await mockUp(jobId, owner);
    expect(answer.statusCode).toBe(200);
    expect(answer.headers['content-type']).toBe('application/pdf');
    expect(answer.headers['content-disposition']).toMatch(/mock-up-\d+-[0-9a-f]{8}\.pdf/);
    expect(answer.rawPayload.subarray(0, 5).toString('latin1')).toBe('%PDF-');
  });

  it('comes as a drawing in millimetres too', async () => {
    const { jobId } = await boxedJob(owner, { issued: false });
    const url = `/api/papers/mock-up-dxf/${jobId}`;
    const answer = await api.app.inject({ method: 'GET', url, headers: { cookie: owner.cookies } });
    expect(answer.statusCode).toBe(200);
    expect(answer.headers['content-disposition']).toMatch(/mock-up-\d+-[0-9a-f]{8}\.dxf/);
    expect(answer.body).toContain('LWPOLYLINE');
    const stranger = await api.owner('Tern Street Audio');
    const refused = await api.app.inject({ method: 'GET', url, headers: { cookie: stranger.cookies } });
    expect(refused.statusCode).toBe(404);
  });

  it('is nothing for another shop or for nobody', async () => {
    const { jobId } = await boxedJob(owner, { issued: true });
    const stranger = await api.owner('Elsewhere Audio');
    expect((await mockUp(jobId, stranger)).statusCode).toBe(404);
    const unsigned = await api.app.inject({ method: 'GET', url: `/api/papers/mock-up/${jobId}` });
    expect(unsigned.statusCode).toBe(401);
  });
});
