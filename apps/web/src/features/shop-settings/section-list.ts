// The pages of the shop's settings, in their order.
import { may, type Role } from '@gusset/contracts/access';

export type ShopSection = {
  readonly id: string;
  readonly label: string;
  /** What a person must be allowed to see for the page to be listed. */
  readonly needs: 'money.read' | 'record.read' | null;
};

export const SHOP_SECTIONS = [
  { id: 'details', label: 'Details and letterhead', needs: null },
  { id: 'units', label: 'Units and paper', needs: null },
  { id: 'hours', label: 'Hours and closed days', needs: null },
  { id: 'rates', label: 'Rates and margins', needs: 'money.read' },
  { id: 'taxes', label: 'Taxes', needs: 'money.read' },
  { id: 'terms', label: 'Terms', needs: 'money.read' },
  { id: 'saw', label: 'Clearances and saw', needs: null },
  { id: 'people', label: 'People', needs: null },
  { id: 'bays', label: 'Bays', needs: null },
  { id: 'leave', label: 'Leave', needs: null },
  { id: 'record', label: 'Record of changes', needs: 'record.read' },
  { id: 'account', label: 'My account', needs: null },
] as const satisfies readonly ShopSection[];

export type SectionId = (typeof SHOP_SECTIONS)[number]['id'];

export function sectionOf(text: string): SectionId | null {
  return SHOP_SECTIONS.find(({ id }) => id === text)?.id ?? null;
}

export function maySeeSection(role: Role, id: SectionId): boolean {
  const needs = SHOP_SECTIONS.find((section) => section.id === id)?.needs ?? null;
  return needs === null || may(role, needs);
}
