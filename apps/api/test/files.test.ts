import { randomUUID } from 'node:crypto';
import { deflateSync } from 'node:zlib';
import type { InjectOptions } from 'fastify';
import sharp from 'sharp';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { SurveyView } from '../src/surveys/survey-view.ts';
import { PUBLIC_URL, shopErrorOf, startTestApi, type TestApi, type TestPerson } from './support/harness.ts';

let api: TestApi;
let owner: TestPerson;
let surveyId: string;

beforeAll(async () => {
  api = await startTestApi();
  owner = await api.owner();
  surveyId = await surveyOf(owner);
});
afterAll(() => api.close());

async function surveyOf(person: TestPerson): Promise<string> {
  const model = await api.deps.doors.inShop(person.shopId, (tx) =>
    tx.vehicleModel.create({
      data: { shopId: person.shopId, make: 'Tern', model: 'Merle', body: 'saloon' },
      select: { id: true },
    }),
  );
  const survey = await person.api.survey.create.mutate({
    key: randomUUID(),
    survey: { modelId: model.id, formKind: 'saloon-boot' },
  });
  return survey.id;
}

type Upload = {
  readonly content: Uint8Array;
  readonly fields?: Readonly<Record<string, string>>;
  readonly name?: string;
  readonly person?: TestPerson;
  readonly headers?: Readonly<Record<string, string>>;
};

async function upload({ content, fields = {}, name = 'IMG_0001.jpg', person = owner, headers = {} }: Upload) {
  const form = new FormData();
  const all = { key: randomUUID(), surveyId, measurementKey: 'floorDepth', ...fields };
  for (const [field, text] of Object.entries(all)) form.append(field, text);
  form.append('photo', new Blob([Uint8Array.from(content)], { type: 'image/jpeg' }), name);
  const request = new Request(`${PUBLIC_URL}/api/files/photos`, { method: 'POST', body: form });
  const options: InjectOptions = {
    method: 'POST',
    url: '/api/files/photos',
    payload: Buffer.from(await request.arrayBuffer()),
    headers: {
      cookie: person.cookies,
      origin: PUBLIC_URL,
      'content-type': request.headers.get('content-type') ?? '',
      ...headers,
    },
  };
  return api.app.inject(options);
}

const read = (fileId: string, size = 'full', person = owner) =>
  api.app.inject({
    method: 'GET',
    url: `/api/files/${fileId}?size=${size}`,
    headers: { cookie: person.cookies },
  });

function picture(width: number, height: number, background = '#6d7a80') {
  return sharp({ create: { width, height, channels: 3, background } });
}

/** A PNG that says it is `side` pixels square, in a few bytes: what a decompression bomb looks like from outside. */
function hugePng(side: number): Buffer {
  const chunk = (type: string, data: Buffer) => {
    const body = Buffer.concat([Buffer.from(type, 'latin1'), data]);
    const length = Buffer.alloc(4);
    length.writeUInt32BE(data.length);
    const sum = Buffer.alloc(4);
    sum.writeUInt32BE(crc32(body));
    return Buffer.concat([length, body, sum]);
  };
  const header = Buffer.alloc(13);
  header.writeUInt32BE(side, 0);
  header.writeUInt32BE(side, 4);
  header.set([1, 0, 0, 0, 0], 8); // one bit, grey
  const rows = deflateSync(Buffer.alloc((1 + Math.ceil(side / 8)) * side));
  const signature = Buffer.from([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a]);
  return Buffer.concat([
    signature,
    chunk('IHDR', header),
    chunk('IDAT', rows),
    chunk('IEND', Buffer.alloc(0)),
  ]);
}

function crc32(bytes: Buffer): number {
  let sum = 0xffffffff;
  for (const byte of bytes) {
    sum ^= byte;
    for (let bit = 0; bit < 8; bit += 1) sum = sum & 1 ? (sum >>> 1) ^ 0xedb88320 : sum >>> 1;
  }
  return (sum ^ 0xffffffff) >>> 0;
}

describe('a photo', () => {
  it('is kept at its dimension and given back with a thumbnail', async () => {
    const content = await picture(1600, 1200).jpeg().toBuffer();
    const answer = await upload({ content, fields: { caption: 'tape on the lip' } });
    expect(answer.statusCode).toBe(201);
    const { photos } = answer.json<SurveyView>();
    expect(photos).toMatchObject([
      { measurementKey: 'floorDepth', caption: 'tape on the lip', widthPx: 1600 },
    ]);
    const fileId = photos[0]?.fileId ?? '';
    const full = await read(fileId);
    expect(full.statusCode).toBe(200);
    expect(full.headers).toMatchObject({
      'content-type': 'image/jpeg',
      'x-content-type-options': 'nosniff',
      'cache-control': 'no-store',
    });
    expect(full.headers['content-disposition']).toContain('filename');
    const small = await sharp((await read(fileId, 'thumb')).rawPayload).metadata();
    expect([small.width, small.height]).toEqual([320, 240]);
  });

  it('loses place and camera, stands upright, and is no larger than 2560', async () => {
    const content = await picture(3000, 2000)
      .withExif({
        IFD0: { Make: 'Tern camera', Orientation: '6' },
        IFD3: { GPSLatitudeRef: 'N', GPSLatitude: '52/1 31/1 0/1', GPSLongitudeRef: 'E' },
      })
      .withMetadata({ orientation: 6 })
      .jpeg()
      .toBuffer();
    const sent = await sharp(content).metadata();
    expect([sent.orientation, sent.exif === undefined]).toEqual([6, false]);
    const answer = await upload({ content });
    const photo = answer.json<SurveyView>().photos.at(-1);
    const kept = await sharp((await read(photo?.fileId ?? '')).rawPayload).metadata();
    expect([kept.width, kept.height]).toEqual([1707, 2560]);
    expect([kept.exif, kept.xmp, kept.iptc, kept.orientation]).toEqual([
      undefined,
      undefined,
      undefined,
      undefined,
    ]);
  });

  it.each(['png', 'webp', 'avif'] as const)('may come as %s', async (format) => {
    const content = await picture(64, 48).toFormat(format).toBuffer();
    expect((await upload({ content, name: `a.${format}` })).statusCode).toBe(201);
  });

  it.each([
    ['a page that calls itself a photo', Buffer.from('<html><script>alert(1)</script></html>')],
    ['an SVG', Buffer.from('<svg xmlns="http://www.w3.org/2000/svg" width="9" height="9"/>')],
    ['a PDF', Buffer.from('%PDF-1.7\n%âãÏÓ\n1 0 obj\n<<>>\nendobj\n')],
    ['nothing', Buffer.alloc(0)],
  ])('is refused when it is %s', async (_, content) => {
    const answer = await upload({ content, name: 'photo.jpg' });
    expect(answer.statusCode).toBe(400);
    expect(answer.json()).toMatchObject({ code: 'FILE_REFUSED', fields: [{ path: 'photo' }] });
  });

  it('is refused when it is a TIFF or a GIF, whose loaders stay shut', async () => {
    const tiff = await picture(20, 20).tiff().toBuffer();
    expect((await upload({ content: tiff })).json()).toMatchObject({ code: 'FILE_REFUSED' });
    const gif = Buffer.from('R0lGODlhAQABAAAAACwAAAAAAQABAAACAkQBADs=', 'base64');
    expect((await upload({ content: gif })).json()).toMatchObject({ code: 'FILE_REFUSED' });
  });

  it('is refused when a small file unpacks to more than 50 million pixels', async () => {
    const content = hugePng(8_000);
    expect(content.length).toBeLessThan(100_000);
    const answer = await upload({ content, name: 'huge.png' });
    expect(answer.statusCode).toBe(400);
    expect(answer.json().message).toContain('50 million pixels');
  });

  it('is refused when it breaks off', async () => {
    const whole = await picture(400, 400).png().toBuffer();
    const answer = await upload({
      content: whole.subarray(0, Math.floor(whole.length / 2)),
      name: 'half.png',
    });
    expect(answer.json()).toMatchObject({ code: 'FILE_REFUSED' });
  });

  it('is refused above 25 MB', async () => {
    const content = Buffer.concat([await picture(9, 9).jpeg().toBuffer(), Buffer.alloc(26 * 1_048_576)]);
    const answer = await upload({ content });
    expect(answer.json()).toMatchObject({ code: 'FILE_REFUSED', message: expect.stringContaining('25 MB') });
  });

  it('sent twice with one key is kept once', async () => {
    const id = await surveyOf(owner);
    const content = await picture(50, 40, '#224466').jpeg().toBuffer();
    const fields = { key: randomUUID(), surveyId: id };
    await upload({ content, fields });
    const again = await upload({ content, fields });
    expect(again.json<SurveyView>().photos).toHaveLength(1);
  });

  it('comes off its survey again', async () => {
    const id = await surveyOf(owner);
    const content = await picture(50, 40, '#664422').jpeg().toBuffer();
    const [photo] = (await upload({ content, fields: { surveyId: id } })).json<SurveyView>().photos;
    const after = await owner.api.survey.removePhoto.mutate({ photoId: photo?.id ?? '' });
    expect(after.photos).toEqual([]);
    expect((await read(photo?.fileId ?? '')).statusCode).toBe(404);
  });
});

describe('who may', () => {
  it('is asked at the door', async () => {
    const content = await picture(20, 20).jpeg().toBuffer();
    expect((await upload({ content, headers: { cookie: '' } })).statusCode).toBe(401);
    const office = await api.member(owner, 'office');
    expect((await upload({ content, person: office })).statusCode).toBe(403);
    expect((await upload({ content, headers: { origin: 'https://elsewhere.example' } })).statusCode).toBe(
      403,
    );
  });

  it('is somebody of the same shop', async () => {
    const content = await picture(20, 20, '#112233').jpeg().toBuffer();
    const [photo] = (await upload({ content })).json<SurveyView>().photos.slice(-1);
    const other = await api.owner('Harbour Lane Audio');
    expect((await read(photo?.fileId ?? '', 'full', other)).statusCode).toBe(404);
    expect((await upload({ content, person: other })).statusCode).toBe(404);
    expect((await shopErrorOf(other.api.survey.removePhoto.mutate({ photoId: photo?.id ?? '' }))).code).toBe(
      'NOT_FOUND',
    );
  });

  it('gets 404 for nonsense, 400 for a place that does not exist in words', async () => {
    expect((await read(randomUUID())).statusCode).toBe(404);
    const content = await picture(20, 20).jpeg().toBuffer();
    const answer = await upload({ content, fields: { surveyId: 'nowhere' } });
    expect(answer.json()).toMatchObject({ code: 'NOT_ACCEPTED', fields: [{ path: 'surveyId' }] });
  });
});
