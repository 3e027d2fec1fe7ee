// The kinds of part as addresses and headings name them.
import { PART_KINDS, type PartKind } from '@gusset/contracts/records';

export const KIND_WORDS: Readonly<Record<PartKind, { readonly one: string; readonly many: string }>> = {
  driver: { one: 'driver', many: 'drivers' },
  amplifier: { one: 'amplifier', many: 'amplifiers' },
  processor: { one: 'processor', many: 'processors' },
  source: { one: 'source', many: 'sources' },
  sheet: { one: 'sheet', many: 'sheets' },
  finish: { one: 'finish', many: 'finishes' },
  hardware: { one: 'piece of hardware', many: 'hardware' },
  supply: { one: 'supply', many: 'supplies' },
};

/** `drivers` and `driver` both name the kind; null for nonsense. */
export function partKindOf(text: string): PartKind | null {
  return PART_KINDS.find((kind) => kind === text || KIND_WORDS[kind].many === text) ?? null;
}

/** The part of an address that names the kind. */
export function kindSlug(kind: PartKind): string {
  return KIND_WORDS[kind].many;
}

/** At the start of a heading. */
export function capital(words: string): string {
  return words.charAt(0).toUpperCase() + words.slice(1);
}
