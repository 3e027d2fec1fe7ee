import type { SupplierInput } from '@gusset/contracts/records';

/** Where the shop buys, and the two makers who lend it parts for demo vehicles. */
export const SUPPLIERS: readonly Omit<SupplierInput, 'terms'>[] = [
  {
    name: 'Tollgate Timber',
    kind: 'supplier',
    contact: 'Bram Verhoek',
    email: 'orders@tollgate-timber.example',
    phone: '555 0131',
    leadDays: 2,
  },
  {
    name: 'Fen Lane Trade Audio',
    kind: 'supplier',
    contact: 'Sunniva Dahl',
    email: 'trade@fen-lane.example',
    phone: '555 0132',
    leadDays: 4,
  },
  {
    name: 'Brightwater Trim Supply',
    kind: 'supplier',
    contact: 'Order desk',
    email: 'desk@brightwater-trim.example',
    phone: '555 0133',
    leadDays: 4,
  },
  {
    name: 'Kestrel Fixings & Cable',
    kind: 'supplier',
    contact: 'Noor Haddad',
    email: 'noor@kestrel-fixings.example',
    phone: '555 0134',
    leadDays: 2,
  },
  {
    name: 'Medlar Loudspeakers',
    kind: 'sponsor',
    contact: 'Ottilie Grahn',
    email: 'partners@medlar.example',
    phone: '555 0135',
    leadDays: 8,
  },
  {
    name: 'Rowan Acoustic Works',
    kind: 'sponsor',
    contact: 'Ruben Castell',
    email: 'ruben@rowan-acoustic.example',
    phone: '555 0136',
    leadDays: 6,
  },
];

/** What was agreed with the sponsors, until the end of the year in which the demo is set up. */
export function sponsorTerms(name: string, year: string): string {
  if (name === 'Medlar Loudspeakers') {
    return `Lends up to four subwoofers at a time for demo vehicles, 60 days each. In return: photographs of every build and the maker's name on the demo sheet. Agreement runs to ${year}-12-31.`;
  }
  if (name === 'Rowan Acoustic Works') {
    return `Midrange and tweeters at half the trade price for two show vehicles a year. Agreement runs to ${year}-12-31, renewed in November.`;
  }
  return '';
}
