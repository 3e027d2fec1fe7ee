// What the job is cut from, what it takes and what it costs: cutting, parts and price sheets.
import type { CuttingInput } from '@gusset/contracts/cutting-sheet';

import type { PartsInput, PartsResult } from '@gusset/contracts/parts';
import type { JobTaskSpec } from '@gusset/contracts/price';
import { standardJobTasks, withoutTask } from '@gusset/sheets';
import { formKey } from '../form-key.ts';
import { length } from '../typed.ts';
import type { DemoOffer, DemoPart, DemoParts, DemoPrice } from './demo-offer.ts';
import type { JobsShop } from './jobs-shop.ts';

type At = { readonly jobId: string; readonly jobName: string };

export async function cutSheets(
  shop: JobsShop,
  at: At,
  cutting: DemoOffer['cutting'],
  board: string,
): Promise<void> {
  const { staff, records } = shop;
  const { amplifierBoard, notes = '' } = cutting;
  const { jobId } = at;
  const { cutting: sheet } = staff.daniel.sheet;
  const { input, version } = await sheet.read({ jobId });
  const handParts =
    amplifierBoard === undefined ? [] : [amplifierBoardPart(records.parts.of(board), amplifierBoard)];
  const saved = await sheet.save({ jobId, version, input: { ...input, handParts, notes } });
  await sheet.issue({ jobId, version: saved.version });
}

function amplifierBoardPart(
  boardId: string,
  [along, across]: readonly [string, string],
): CuttingInput['handParts'][number] {
  return {
    key: 'amplifier-board',
    name: 'Amplifier board',
    boardId,
    length: length(along),
    width: length(across),
    quantity: 1,
    grain: 'none',
  };
}

export async function listParts(shop: JobsShop, at: At, parts: DemoParts): Promise<void> {
  const { staff } = shop;
  const { jobId } = at;
  const { parts: sheet } = staff.ines.sheet;
  const { input, version } = await sheet.read({ jobId });
  const typed = await sheet.save({ jobId, version, input: partsInput(shop, at, input, parts) });
  const overrides = loansOf(shop, parts, typed.outcome.state === 'ready' ? typed.outcome.result : null);
  const saved =
    overrides.length === 0
      ? typed
      : await sheet.save({ jobId, version: typed.version, input: { ...typed.input, overrides } });
  await sheet.issue({ jobId, version: saved.version });
}

function partsInput(shop: JobsShop, at: At, input: PartsInput, parts: DemoParts): PartsInput {
  return {
    ...input,
    handLines: parts.byHand.map((part) => handLine(shop, at, part)),
    settledBriefKeys: [...(parts.settledBriefKeys ?? [])],
  };
}

function handLine({ records }: JobsShop, { jobName }: At, part: DemoPart): PartsInput['handLines'][number] {
  const { code, source = 'buy', note = '', ...rest } = part;
  return {
    ...rest,
    key: `hand:${formKey(`${jobName} ${code}`)}`,
    partId: records.parts.of(code),
    description: '',
    source: source === 'buy' && records.stocked.has(code) ? 'stock' : source,
    supplierId: source === 'buy' ? records.partSuppliers.of(code) : null,
    returnDueOn: null,
    note,
  };
}

/** What somebody lends, and when it goes back. */
function loansOf(
  { calendar }: JobsShop,
  { loans = [] }: DemoParts,
  result: PartsResult | null,
): PartsInput['overrides'] {
  return loans.map(({ line, source, backIn }) => {
    const key = result?.lines.find((known) => known.group === line || known.key === line)?.key;
    if (key === undefined) throw new Error(`the demo lends ${line}, which the job does not need`);
    return {
      key,
      quantity: null,
      reason: '',
      partId: null,
      source,
      supplierId: null,
      returnDueOn: calendar.day(backIn),
      leftOut: false,
    };
  });
}

export async function priceJob(shop: JobsShop, { jobId }: At, price: DemoPrice): Promise<void> {
  const { staff } = shop;
  const { scope, exclusions = [], extraLines = [], discount = null } = price;
  const { price: sheet } = staff.daniel.sheet;
  const { input, version } = await sheet.read({ jobId });
  const saved = await sheet.save({
    jobId,
    version,
    input: { ...input, tasks: tasksOf(price), scope, exclusions, extraLines, discount },
  });
  await sheet.issue({ jobId, version: saved.version });
}

function tasksOf({ finish, without = [], minutes = {} }: DemoPrice): JobTaskSpec[] {
  const kept = without.reduce<JobTaskSpec[]>(
    (tasks, key) => withoutTask(tasks, key),
    standardJobTasks(finish),
  );
  return kept.map((task) => ({ ...task, minutes: minutes[task.key] ?? task.minutes }));
}
