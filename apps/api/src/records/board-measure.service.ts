// The calliper reading of a real sheet, as somebody at the saw gives it: the one figure of the catalogue that they may
// change. Prices and everything else of the part stay as they are.
import type { PartInput } from '@gusset/contracts/records';
import { record } from '../data/audit.ts';
import { conflictError } from '../data/versioned.ts';
import type { Actor, Deps } from '../deps.ts';
import { notAccepted, notFound } from '../errors.ts';
import type { PartRow, PartView } from './kinds/part.queries.ts';
import type { RecordKind } from './record-kind.ts';

type BoardInput = Extract<PartInput, { kind: 'sheet' }>;

/** A board sold as 18 mm measures 17.5 to 18.5; further off, a digit slipped or it is another board. */
const FURTHEST_FROM_NOMINAL = 0.2;

export type BoardReading = {
  readonly id: string;
  readonly version: number;
  readonly measuredThicknessMm: number;
};

/**
 * NOT_ACCEPTED far from the thickness it is sold as; CHANGED_MEANWHILE with both readings when somebody else was first.
 */
export function measureBoard(
  { doors }: Deps,
  actor: Actor,
  kind: RecordKind<BoardInput, PartRow, PartView<'sheet'>>,
  { id, version, measuredThicknessMm }: BoardReading,
): Promise<PartView<'sheet'>> {
  return doors.inShop(actor.shopId, async (tx) => {
    const row = await kind.find(tx, actor, id);
    if (row === null) throw notFound('board');
    const input = kind.toInput(row);
    const { nominalThicknessMm, measuredThicknessMm: before } = input.figures;
    if (Math.abs(measuredThicknessMm / nominalThicknessMm - 1) > FURTHEST_FROM_NOMINAL) {
      throw notAccepted(
        'measuredThicknessMm',
        `A board sold as ${nominalThicknessMm} mm does not measure ${measuredThicknessMm} mm. Read the callipers again, or choose the board that it is.`,
      );
    }
    const figures = { ...input.figures, measuredThicknessMm };
    if ((await kind.change(tx, actor, { id, version }, { ...input, figures })) === 0) {
      throw await conflictError(tx, actor, {
        subject: kind.subject,
        subjectId: id,
        currentVersion: row.version,
        yours: { measuredThicknessMm },
        theirs: { measuredThicknessMm: before },
      });
    }
    await record(tx, actor, {
      act: 'part.sheet.measured',
      subject: kind.subject,
      subjectId: id,
      before: { measuredThicknessMm: before },
      after: { measuredThicknessMm },
    });
    const measured = await kind.find(tx, actor, id);
    if (measured === null) throw notFound('board');
    return kind.toView(measured, actor);
  });
}
