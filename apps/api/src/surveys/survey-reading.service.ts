// One lettered dimension at a time: two people measuring different letters never meet; at the same letter the second
// is shown both readings.
import type { Reading, SetReadingInput } from '@gusset/contracts/survey';
import type { Tx } from '@gusset/database';
import { readingRefusal, surveyForm } from '@gusset/sheets';
import { isRefusal, toShopTime } from '@gusset/units';
import { record } from '../data/audit.ts';
import { fromShopDate } from '../data/dates.ts';
import { once } from '../data/idempotency.ts';
import type { Actor, Deps } from '../deps.ts';
import { notAccepted, refusedByEngine, ShopError } from '../errors.ts';
import {
  extrasOf,
  formKindOf,
  readingsOf,
  removeReading,
  type SurveyRow,
  surveysVisibleTo,
  writeReading,
} from './survey.queries.ts';
import { openRevision, viewSurvey } from './survey-scope.ts';
import type { SurveyView } from './survey-view.ts';

/** A phone's clock may be off, but nobody measured tomorrow. */
const CLOCK_SLACK_MS = 10 * 60_000;

/** Keeps the reading. CHANGED_MEANWHILE with both where someone else took the same letter; sent twice, kept once. */
export function setReading(
  { doors, clock }: Deps,
  actor: Actor,
  key: string,
  input: SetReadingInput,
): Promise<SurveyView> {
  return doors.inShop(actor.shopId, (tx) =>
    once(tx, actor, key, input, async () => {
      const row = await openRevision(tx, actor, input.surveyId);
      const reading = accepted(row, input.reading);
      const now = clock.now();
      const takenAt = input.takenAt === null ? now : new Date(input.takenAt);
      if (takenAt.getTime() > now.getTime() + CLOCK_SLACK_MS) {
        throw notAccepted('takenAt', 'This device’s clock runs ahead: the reading would be from the future.');
      }
      const standing = readingsOf(row).find((each) => each.key === reading.key) ?? null;
      if (standing !== null && saysTheSame(standing, reading)) return viewSurvey(tx, actor, row.id);
      const { version } = input;
      const write = { surveyId: row.id, version, reading, takenBy: actor.name, takenAt };
      if (!(await writeReading(tx, actor, write))) throw readingConflict(reading, standing);
      await noteTaker(tx, actor, row, takenAt);
      await record(tx, actor, {
        act: 'survey.measured',
        subject: 'survey',
        subjectId: row.id,
        before: standing,
        after: reading,
      });
      return viewSurvey(tx, actor, row.id);
    }),
  );
}

export function dropReading(
  { doors }: Deps,
  actor: Actor,
  key: string,
  input: { readonly surveyId: string; readonly key: string; readonly version: number },
): Promise<SurveyView> {
  return doors.inShop(actor.shopId, (tx) =>
    once(tx, actor, key, input, async () => {
      const row = await openRevision(tx, actor, input.surveyId);
      const standing = readingsOf(row).find((each) => each.key === input.key) ?? null;
      if (standing === null) return viewSurvey(tx, actor, row.id);
      const at = { surveyId: row.id, key: input.key, version: input.version };
      if (!(await removeReading(tx, actor, at))) throw readingConflict(null, standing);
      await record(tx, actor, {
        act: 'survey.reading-removed',
        subject: 'survey',
        subjectId: row.id,
        before: standing,
      });
      return viewSurvey(tx, actor, row.id);
    }),
  );
}

function accepted(row: SurveyRow, reading: Reading): Reading {
  const form = surveyForm(formKindOf(row), extrasOf(row).free);
  if (isRefusal(form)) throw refusedByEngine([form.refusal]);
  const dimension = form.dimensions.find(({ key }) => key === reading.key);
  if (dimension === undefined) {
    throw notAccepted('reading.key', 'This survey has no such dimension any more. Load it again.');
  }
  const refusal = readingRefusal(dimension, reading);
  if (refusal !== null) {
    throw refusedByEngine([{ ...refusal.refusal, field: `reading.${refusal.refusal.field}` }]);
  }
  return reading;
}

function saysTheSame(a: Reading, b: Reading): boolean {
  return a.value === b.value && a.plusMinus === b.plusMinus && a.method === b.method && a.typed === b.typed;
}

type StandingReading = ReturnType<typeof readingsOf>[number];

function readingConflict(yours: Reading | null, theirs: StandingReading | null): ShopError {
  const who = theirs === null ? 'Someone else removed' : `${theirs.takenBy} measured`;
  return new ShopError(
    'CHANGED_MEANWHILE',
    `${who} this dimension in between. Choose which reading to keep.`,
    {
      conflict: {
        currentVersion: theirs?.version ?? 0,
        savedBy: theirs?.takenBy ?? null,
        savedAt: theirs?.takenAt ?? null,
        differences: [{ field: yours?.key ?? theirs?.key ?? '', yours, theirs }],
      },
    },
  );
}

/** Who measured and on which day of the shop: from the first reading, more names as they come. */
async function noteTaker(tx: Tx, actor: Actor, row: SurveyRow, takenAt: Date): Promise<void> {
  const names = row.takenBy === '' ? [] : row.takenBy.split(', ');
  if (names.includes(actor.name) && row.takenOn !== null) return;
  const { timeZone } = await tx.shop.findUniqueOrThrow({
    where: { id: actor.shopId },
    select: { timeZone: true },
  });
  const takenOn = row.takenOn ?? fromShopDate(toShopTime(takenAt.toISOString(), timeZone).date);
  await tx.survey.updateMany({
    where: { ...surveysVisibleTo(actor), id: row.id },
    data: { takenBy: [...new Set([...names, actor.name])].join(', '), takenOn },
  });
}
