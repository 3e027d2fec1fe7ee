// An uploaded photo is decoded and written anew: what is kept is pixels only, turned upright, no larger than a screen
// or a page needs, without the place and the camera that the phone wrote into it.
import { fileTypeFromBuffer } from 'file-type';
import sharp from 'sharp';
import { ShopError } from '../errors.ts';

export const MAX_PHOTO_BYTES = 25 * 1_048_576;
/** A phone takes 12 to 48 million; more is a bomb in a small file. */
const MAX_PIXELS = 50_000_000;
const LONG_SIDE_PX = 2_560;
const THUMBNAIL_PX = 320;
const JPEG_QUALITY = 82;
const TIMES_OUT_SECONDS = 20;

const ACCEPTED = ['image/jpeg', 'image/png', 'image/webp', 'image/avif'] as const;

// Other loaders (SVG, PDF, TIFF, GIF, camera raw) stay shut, whatever a file claims to be.
sharp.block({ operation: ['VipsForeignLoad'] });
sharp.unblock({
  operation: [
    'VipsForeignLoadJpegBuffer',
    'VipsForeignLoadPngBuffer',
    'VipsForeignLoadWebpBuffer',
    'VipsForeignLoadHeifBuffer', // AVIF comes in this container; HEIC is refused by its signature
  ],
});
sharp.cache(false); // one photo is worked on once
sharp.concurrency(1);

export type ReadyPhoto = {
  readonly content: Uint8Array;
  readonly mime: 'image/jpeg';
  readonly widthPx: number;
  readonly heightPx: number;
  /** As the person's file was called, without a path. */
  readonly name: string;
};

/** FILE_REFUSED in words where the file is no photo that is taken here. */
export async function readyPhoto(upload: Uint8Array, fileName: string): Promise<ReadyPhoto> {
  if (upload.byteLength === 0) throw refusedFile('The file is empty.');
  if (upload.byteLength > MAX_PHOTO_BYTES) throw refusedFile('The photo is larger than 25 MB.');
  const type = await fileTypeFromBuffer(upload);
  if (!ACCEPTED.some((mime) => mime === type?.mime)) {
    throw refusedFile('This is not a photo of a kind that is taken here: JPEG, PNG, WebP or AVIF.');
  }
  try {
    const { data, info } = await open(upload)
      .rotate()
      .resize({ width: LONG_SIDE_PX, height: LONG_SIDE_PX, fit: 'inside', withoutEnlargement: true })
      .flatten({ background: '#ffffff' })
      .toColourspace('srgb')
      .jpeg({ quality: JPEG_QUALITY, mozjpeg: true })
      .timeout({ seconds: TIMES_OUT_SECONDS })
      .toBuffer({ resolveWithObject: true });
    return {
      content: data,
      mime: 'image/jpeg',
      widthPx: info.width,
      heightPx: info.height,
      name: plainName(fileName),
    };
  } catch (error) {
    throw asRefusal(error);
  }
}

/** Small enough for a list; made from what is kept, so it is trusted. */
export function thumbnailOf(content: Uint8Array): Promise<Uint8Array> {
  return open(content)
    .resize({ width: THUMBNAIL_PX, height: THUMBNAIL_PX, fit: 'inside', withoutEnlargement: true })
    .jpeg({ quality: 72 })
    .timeout({ seconds: TIMES_OUT_SECONDS })
    .toBuffer();
}

function open(content: Uint8Array) {
  return sharp(content, { limitInputPixels: MAX_PIXELS, failOn: 'error', sequentialRead: true });
}

/** The image library says what is wrong with an image by its message only; anything else is a fault of ours. */
function asRefusal(error: unknown): unknown {
  if (!(error instanceof Error)) return error;
  if (error.message.includes('pixel limit')) {
    return refusedFile('The photo has more than 50 million pixels. Take it smaller.');
  }
  const unreadable = ['unsupported', 'corrupt', 'Input buffer', 'load', 'premature', 'read error', 'timeout'];
  const isImage = unreadable.some((word) => error.message.toLowerCase().includes(word.toLowerCase()));
  return isImage ? refusedFile('The photo could not be read: it is damaged or not finished.') : error;
}

function refusedFile(message: string): ShopError {
  return new ShopError('FILE_REFUSED', message, { fields: [{ path: 'photo', message }] });
}

const MAX_NAME = 120;

/** Letters, figures, space, dot and dash: a name that a folder and a header can hold. */
export function plainName(fileName: string): string {
  const last = fileName.split(/[\\/]/).at(-1) ?? '';
  const clean = last
    .normalize('NFC')
    .replace(/[^\p{L}\p{N} ._-]/gu, '')
    .replace(/^\.+/, '')
    .trim();
  return clean === '' ? 'photo' : clean.slice(0, MAX_NAME);
}
