// The title block that closes every sheet: two rows of boxes along the bottom edge, captions above their values.
import type { TitleBlock } from '@gusset/contracts/drawings';
import { line, polygon, text } from '../scene/items.ts';
import type { SceneItem } from '../scene/scene.ts';
import { type Extent, rectangle, spot } from '../scene/spot.ts';
import { shortenText } from '../text/text-width.ts';

export const TITLE_BLOCK_HEIGHT_PT = 64;

/** What the page adds to the job's own title block. */
export type PageFacts = {
  /** `1:10`; null = not to scale, or no drawing. */
  readonly scale: string | null;
  readonly page: number;
  readonly pages: number;
};

type Box = {
  readonly caption: string;
  readonly value: string;
  readonly share: number;
  readonly open: boolean;
};

const box = (caption: string, value: string, share: number, open = false): Box => ({
  caption,
  value,
  share,
  open,
});

const CAPTION_PT = 6.5;
const VALUE_PT = 10;
const INSET_PT = 6;

/** `area` is the printable area of the page; the block stands on its bottom edge. */
export function titleBlockItems(block: TitleBlock, facts: PageFacts, area: Extent): readonly SceneItem[] {
  const rowPt = TITLE_BLOCK_HEIGHT_PT / 2;
  const top = area.bottom - TITLE_BLOCK_HEIGHT_PT;
  const frame = rectangle(area.left, top, area.right - area.left, TITLE_BLOCK_HEIGHT_PT);
  const upper = [
    box('Shop', block.shop, 1.7),
    box('Vehicle', block.vehicle, 2.2),
    box('Customer', block.customer, 1.7),
    box('Sheet', block.sheet, 1.2),
    box('Page', `${facts.page} of ${facts.pages}`, 0.8),
  ];
  const lower = [
    box('Job', block.job, 0.9),
    box('Rev', block.revision, 0.5),
    box('Drawn', block.drawn, 1.2),
    box('Checked', block.checked ?? 'not yet', 1.2, block.checked === null),
    box('Units', block.units, 0.7),
    box('Scale', facts.scale ?? 'not to scale', 1),
    box('Date', block.date, 1.5),
  ];
  return [
    polygon(frame, 'frame', 'sheet'),
    line(spot(area.left, top + rowPt), spot(area.right, top + rowPt), {
      role: 'frame',
      dashPt: null,
      widthPt: 0.6,
    }),
    ...rowItems(upper, area, top, rowPt),
    ...rowItems(lower, area, top + rowPt, rowPt),
  ];
}

function rowItems(boxes: readonly Box[], area: Extent, top: number, heightPt: number): SceneItem[] {
  const sum = boxes.reduce((total, { share }) => total + share, 0);
  let left = area.left;
  return boxes.flatMap(({ caption, value, share, open }, index) => {
    const widthPt = ((area.right - area.left) * share) / sum;
    const items: SceneItem[] = [
      text(spot(left + INSET_PT, top + 11), caption.toUpperCase(), {
        sizePt: CAPTION_PT,
        face: 'condensed',
        ink: 'ink-2',
      }),
      text(
        spot(left + INSET_PT, top + 24.5),
        shortenText(value, 'semibold', VALUE_PT, widthPt - 2 * INSET_PT),
        {
          sizePt: VALUE_PT,
          face: 'semibold',
          ink: open ? 'pencil' : 'ink',
        },
      ),
    ];
    if (index > 0) {
      items.unshift(
        line(spot(left, top), spot(left, top + heightPt), { role: 'frame', dashPt: null, widthPt: 0.6 }),
      );
    }
    left += widthPt;
    return items;
  });
}
