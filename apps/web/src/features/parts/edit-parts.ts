// Changes to the parts sheet's input, as pure functions: a worked-out line is overridden, a hand line is changed.
import type { PartsInput, PartsLine, PartsOverride } from '@gusset/contracts/parts';

export type LineChange = {
  readonly quantity?: number;
  readonly reason?: string;
  readonly source?: PartsLine['source'];
  readonly returnDueOn?: string | null;
};

const UNCHANGED: Omit<PartsOverride, 'key'> = {
  quantity: null,
  reason: '',
  partId: null,
  source: null,
  supplierId: null,
  returnDueOn: null,
  leftOut: false,
};

export function isByHand(input: PartsInput, key: string): boolean {
  return input.handLines.some((line) => line.key === key);
}

/** The line with this key changed, whichever kind it is. */
export function changeLine(
  input: PartsInput,
  key: string,
  change: LineChange,
): Pick<PartsInput, 'handLines' | 'overrides'> {
  if (isByHand(input, key)) {
    const { reason, ...rest } = change;
    const changed = { ...rest, ...(reason === undefined ? {} : { note: reason }) };
    return {
      ...input,
      handLines: input.handLines.map((line) => (line.key === key ? { ...line, ...changed } : line)),
    };
  }
  return { ...input, overrides: withOverride(input.overrides, key, change) };
}

/** Off the job: a hand line goes, a worked-out one is left out, one of the brief is turned down. */
export function removeLine(input: PartsInput, key: string): PartsInput {
  if (isByHand(input, key))
    return { ...input, handLines: input.handLines.filter((line) => line.key !== key) };
  if (key.startsWith('brief:')) {
    return { ...input, settledBriefKeys: [...input.settledBriefKeys, key.slice('brief:'.length)] };
  }
  return { ...input, overrides: withOverride(input.overrides, key, { leftOut: true }) };
}

/** Back as the design says. */
export function restoreLine(input: PartsInput, key: string): Pick<PartsInput, 'overrides'> {
  return { overrides: input.overrides.filter((override) => override.key !== key) };
}

function withOverride(
  overrides: readonly PartsOverride[],
  key: string,
  change: Partial<PartsOverride>,
): PartsOverride[] {
  const before = overrides.find((override) => override.key === key) ?? { ...UNCHANGED, key };
  return [...overrides.filter((override) => override.key !== key), { ...before, ...change }];
}
