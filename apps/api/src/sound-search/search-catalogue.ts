// The shop's drivers as the search takes them, and as the screen names them.
import { deriveDriver } from '@gusset/acoustics';
import { may } from '@gusset/contracts/access';
import type { SearchDriver } from '@gusset/contracts/acoustics';
import { driverFiguresSchema } from '@gusset/contracts/records';
import { isRefusal } from '@gusset/units';
import type { Actor } from '../deps.ts';
import type { DriverRow } from './sound-search.queries.ts';

export type Catalogue = {
  readonly drivers: readonly SearchDriver[];
  /** By driver: maker and name, and how many lie on the shelf. */
  readonly names: ReadonlyMap<string, { readonly name: string; readonly inStock: number }>;
  /** Data sheets that lack a figure or contain what cannot be. */
  readonly sheetsIncomplete: number;
};

/** Costs only for those who may see them: the search itself doesn't know them for anybody else. */
export function toCatalogue(rows: readonly DriverRow[], actor: Actor, inStockOnly: boolean): Catalogue {
  const seesCosts = may(actor.role, 'money.read');
  const drivers = rows.flatMap((row): SearchDriver[] => {
    const figures = driverFiguresSchema.parse(row.figures);
    const derived = deriveDriver(figures.dataSheet);
    if (isRefusal(derived)) return [];
    return [
      {
        id: row.id,
        parameters: derived.driver,
        nominalOhm: figures.nominalOhm,
        mountingDepthMm: figures.mountingDepthMm,
        costMinor: seesCosts && row.buyPriceMinor > 0 ? row.buyPriceMinor : null, // 0 = never entered
        available: inStockOnly ? Math.floor(row.stockQuantity) : null,
      },
    ];
  });
  return {
    drivers,
    names: new Map(rows.map((row) => [row.id, { name: nameOf(row), inStock: row.stockQuantity }])),
    sheetsIncomplete: rows.length - drivers.length,
  };
}

function nameOf({ maker, name }: DriverRow): string {
  return [maker, name].filter((word) => word !== '').join(' ');
}
