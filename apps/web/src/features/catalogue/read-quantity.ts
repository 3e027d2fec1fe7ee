// Typed masses and volumes as plain numbers, for fields that store kilograms and litres.
import { isRefusal, parseMass, parseVolume, type Refusal } from '@gusset/units';

export function kilograms(text: string): number | Refusal {
  const mass = parseMass(text, { unit: 'kg' });
  return isRefusal(mass) ? mass : mass.kg;
}

export function litres(text: string): number | Refusal {
  const volume = parseVolume(text, { unit: 'L' });
  return isRefusal(volume) ? volume : volume.litres;
}
