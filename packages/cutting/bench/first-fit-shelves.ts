// The plain yardstick: tallest part first, each on the first shelf that has room, a new shelf on the first sheet
// that has room, else a new sheet. One kind of sheet, no kerf. Parts that may turn lie on their longer side.
import type { LayoutInput } from '@gusset/contracts/cutting';

type Shelf = { readonly height: number; left: number };
type Sheet = { left: number; readonly shelves: Shelf[] };

/** Number of sheets that shelf first-fit needs. */
export function firstFitShelves(input: LayoutInput): number {
  const [stock] = input.sheets;
  if (stock === undefined) return 0;
  const sheets: Sheet[] = [];
  const parts = input.parts.map((part) =>
    part.mayTurn
      ? { width: Math.max(part.lengthMm, part.widthMm), height: Math.min(part.lengthMm, part.widthMm) }
      : { width: part.lengthMm, height: part.widthMm },
  );
  for (const { width, height } of parts.toSorted((one, two) => two.height - one.height)) {
    const fits = (shelf: Shelf): boolean => shelf.height >= height && shelf.left >= width;
    const shelf = sheets.flatMap((sheet) => sheet.shelves).find(fits);
    if (shelf !== undefined) {
      shelf.left -= width;
      continue;
    }
    let sheet = sheets.find((one) => one.left >= height);
    if (sheet === undefined) {
      sheet = { left: stock.widthMm, shelves: [] };
      sheets.push(sheet);
    }
    sheet.left -= height;
    sheet.shelves.push({ height, left: stock.lengthMm - width });
  }
  return sheets.length;
}
