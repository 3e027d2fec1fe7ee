import { randomUUID } from 'node:crypto';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { hashOfSecret, newSecret } from '../src/people/secret.ts';
import { PUBLIC_URL, startTestApi, type TestApi } from './support/harness.ts';

let api: TestApi;

beforeAll(async () => {
  api = await startTestApi({ env: { SIGN_UP_CLOSED: '1' } });
});
afterAll(() => api.close());

const signUp = (invitation: string | null) =>
  api.app.inject({
    method: 'POST',
    url: '/api/auth/sign-up/email',
    headers: { origin: PUBLIC_URL, ...(invitation === null ? {} : { 'x-gusset-invitation': invitation }) },
    payload: {
      name: 'Ines Calder',
      email: `${randomUUID()}@example.com`,
      password: 'lantern copper meadow violin',
    },
  });

it('lets in whoever holds an invitation, and nobody else', async () => {
  const shopId = randomUUID();
  const { token, tokenHash } = newSecret();
  await api.deps.doors.inShop(shopId, async (tx) => {
    await tx.shop.create({
      data: { id: shopId, name: 'Quarry Road Sound', timeZone: 'UTC', currency: 'EUR', settings: {} },
    });
    await tx.accessToken.create({
      data: {
        shopId,
        tokenHash,
        purpose: 'invite',
        subjectId: randomUUID(),
        expiresAt: new Date(Date.now() + 60_000),
        detail: { role: 'office', name: 'Ines Calder', email: 'ines@example.com', invitedBy: 'Mira Ilves' },
      },
    });
  });
  expect((await signUp(null)).statusCode).toBe(403);
  expect((await signUp(`${token}x`)).statusCode).toBe(403);
  expect((await signUp(token)).statusCode).toBe(200);
  expect(hashOfSecret(token)).toBe(tokenHash);
});
