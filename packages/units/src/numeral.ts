// One written numeral -> its number, with the decimal sign that people of both conventions type.

export type NumeralReading =
  | { readonly kind: 'number'; readonly value: number; readonly whole: boolean }
  /** Both readings make sense: `1,234` is a thousand-odd or one and a bit. */
  | { readonly kind: 'ambiguous'; readonly grouped: string; readonly decimal: string }
  | { readonly kind: 'nonsense' };

const NONSENSE: NumeralReading = { kind: 'nonsense' };

/**
 * Reads digits with points and commas. `decimalComma`: the shop writes 17,25. A lone sign with exactly three
 * digits after it, and one to three before, may be a thousands mark: then both readings are named, unless the
 * sign is the shop's own decimal sign.
 */
export function readNumeral(text: string, decimalComma: boolean): NumeralReading {
  if (!/^(?=.*\d)[\d.,]+$/.test(text)) return NONSENSE;
  const points = text.split('.').length - 1;
  const commas = text.split(',').length - 1;
  if (points === 0 && commas === 0) return whole(text);
  if (points > 0 && commas > 0) return readBothSigns(text);
  const sign = points > 0 ? '.' : ',';
  if (points + commas > 1) return readGroups(text, sign);
  const looksGrouped = /^[1-9]\d{0,2}[.,]\d{3}$/.test(text);
  const ownDecimalSign = decimalComma ? ',' : '.';
  if (looksGrouped && sign !== ownDecimalSign) {
    return { kind: 'ambiguous', grouped: text.replace(sign, ''), decimal: text.replace(sign, '.') };
  }
  return decimal(text.replace(sign, '.'));
}

/** `1,234.5` and `1.234,5`: the last sign is the decimal sign, the other must group by three. */
function readBothSigns(text: string): NumeralReading {
  const decimalSign = text.lastIndexOf('.') > text.lastIndexOf(',') ? '.' : ',';
  const [front = '', back = '', ...more] = text.split(decimalSign);
  const groups = readGroups(front, decimalSign === '.' ? ',' : '.');
  if (more.length > 0 || back === '' || groups.kind !== 'number') return NONSENSE;
  return decimal(`${groups.value}.${back}`);
}

function readGroups(text: string, sign: '.' | ','): NumeralReading {
  const grouped = sign === '.' ? /^[1-9]\d{0,2}(\.\d{3})+$/ : /^[1-9]\d{0,2}(,\d{3})+$/;
  return grouped.test(text) ? whole(text.replaceAll(sign, '')) : NONSENSE;
}

function whole(digits: string): NumeralReading {
  return { kind: 'number', value: Number(digits), whole: true };
}

function decimal(text: string): NumeralReading {
  return { kind: 'number', value: Number(text), whole: false };
}
