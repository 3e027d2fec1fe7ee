// The panels of all boxes of a job, each box as often as it is built.
import type { Panel } from '@gusset/contracts/panel';
import { enclosuresOf, type GatheredUpstream } from '../sheet-definition.ts';

/**
 * Where a job has several boxes, a mark says which: `2-A` is panel A of box 2. Box 1 keeps its panels' plain ids, so
 * that spares asked for while it was the only one stay; the others' begin with their number. Null = no box says anything.
 */
export function boxPanels(upstream: GatheredUpstream): readonly Panel[] | null {
  const boxes = enclosuresOf(upstream).flatMap((enclosure) =>
    enclosure.box === null ? [] : [{ ...enclosure, panels: enclosure.box.box.panels }],
  );
  if (boxes.length === 0) return null;
  return boxes.flatMap(({ number, copies, panels }) =>
    panels.map((panel) => ({
      ...panel,
      id: number === 1 ? panel.id : `${number}:${panel.id}`,
      mark: boxes.length === 1 ? panel.mark : `${number}-${panel.mark}`,
      quantity: panel.quantity * copies,
    })),
  );
}
