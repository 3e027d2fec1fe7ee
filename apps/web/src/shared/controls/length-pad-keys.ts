// What each key of the length pad does to the text in the field. Pure: text in, text out.

/** Sixteenths as they stand on a tape: 1/16 … 15/16, reduced. */
export const TAPE_FRACTIONS = [
  '1/16',
  '1/8',
  '3/16',
  '1/4',
  '5/16',
  '3/8',
  '7/16',
  '1/2',
  '9/16',
  '5/8',
  '11/16',
  '3/4',
  '13/16',
  '7/8',
  '15/16',
] as const;

export type TapeFraction = (typeof TAPE_FRACTIONS)[number];

export type PadKey =
  | { readonly kind: 'digit'; readonly digit: string }
  | { readonly kind: 'point' }
  | { readonly kind: 'fraction'; readonly fraction: TapeFraction }
  | { readonly kind: 'unit'; readonly unit: 'mm' | 'in' }
  | { readonly kind: 'sign' }
  | { readonly kind: 'plus' }
  | { readonly kind: 'clear' }
  | { readonly kind: 'erase' };

type Parts = {
  readonly sign: string;
  readonly number: string;
  readonly fraction: string;
  readonly unit: string;
};

const SHAPE =
  /^(?<sign>[-−]?)\s*(?<number>\d*[.,]?\d*)\s*(?<fraction>(?:\d+\/\d+)?)\s*(?<unit>(?:mm|in|″|")?)$/u;
const BARE_FRACTION = /^(?<sign>[-−]?)\s*(?<fraction>\d+\/\d+)\s*(?<unit>(?:mm|in|″|")?)$/u;

const takeApart = (text: string): Parts | null => {
  const plain = text.replace(/[\u2009\u00a0]/gu, ' ').trim();
  const groups = BARE_FRACTION.exec(plain)?.groups ?? SHAPE.exec(plain)?.groups;
  if (!groups) return null;
  const { sign = '', number = '', fraction = '', unit = '' } = groups;
  return { sign: sign === '' ? '' : '-', number, fraction, unit: unit === '″' || unit === '"' ? 'in' : unit };
};

const put = ({ sign, number, fraction, unit }: Parts): string => {
  const size = [number, fraction].filter((part) => part !== '').join(' ');
  const shown = `${sign}${size}`;
  return unit === '' || size === '' ? shown : `${shown} ${unit}`;
};

/** A text the pad can't take apart (a sum, feet) grows at its end, as if typed. */
const typeAtEnd = (text: string, key: PadKey): string => {
  if (key.kind === 'digit') return `${text}${key.digit}`;
  if (key.kind === 'point') return `${text}.`;
  if (key.kind === 'fraction') return `${text.trimEnd()} ${key.fraction}`;
  if (key.kind === 'unit') return `${text} ${key.unit}`;
  if (key.kind === 'plus') return `${text.trimEnd()} + `;
  if (key.kind === 'clear') return '';
  if (key.kind === 'erase') return text.slice(0, -1).trimEnd();
  return text;
};

const erase = (parts: Parts): string => {
  if (parts.unit !== '') return put({ ...parts, unit: '' });
  if (parts.fraction !== '') return put({ ...parts, fraction: '' });
  if (parts.number !== '') return put({ ...parts, number: parts.number.slice(0, -1) });
  return '';
};

/** `17` and the key 1/4 give `17 1/4`; another fraction replaces it; a unit key sets or changes the unit. */
export function pressPadKey(text: string, key: PadKey): string {
  const parts = takeApart(text);
  if (parts === null) return typeAtEnd(text, key);
  switch (key.kind) {
    case 'digit':
      return put({ ...parts, number: `${parts.number}${key.digit}` });
    case 'point':
      return /[.,]/u.test(parts.number) ? put(parts) : `${put({ ...parts, unit: '' })}.`;
    case 'fraction':
      return put({ ...parts, fraction: parts.fraction === key.fraction ? '' : key.fraction });
    case 'unit':
      return put({ ...parts, unit: parts.unit === key.unit ? '' : key.unit });
    case 'sign':
      return put({ ...parts, sign: parts.sign === '' ? '-' : '' });
    case 'plus':
    case 'clear':
      return parts.number + parts.fraction === '' ? '' : typeAtEnd(text, key);
    case 'erase':
      return erase(parts);
  }
}
