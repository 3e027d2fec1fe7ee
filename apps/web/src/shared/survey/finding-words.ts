// What a survey says about itself, in the shop's words: contradictions first, then what was assumed.

import type { CavityFinding, CavitySketch, SectionForm } from '@gusset/contracts/cargo';
import { type LengthManner, valueWords } from './reading-words.ts';

export type SpokenFinding = {
  readonly id: string;
  /** `fail` = two readings cannot both be right; `check` = costs room or sureness; `note` = good to know. */
  readonly tone: 'fail' | 'check' | 'note';
  readonly words: string;
  /** The dimension to look at. */
  readonly key: string;
};

const ORDER = { fail: 0, check: 1, note: 2 } as const;

export function spokenFindings(
  findings: readonly CavityFinding[],
  form: SectionForm,
  manner: LengthManner,
): readonly SpokenFinding[] {
  return findings
    .map((finding, index) => ({
      id: `${finding.code}-${finding.key}-${index}`,
      key: finding.key,
      ...spoken(finding, form, manner),
    }))
    .sort((a, b) => ORDER[a.tone] - ORDER[b.tone]);
}

/** Readings that cannot be: what is accepted and why. */
export function spokenRejections(rejected: CavitySketch['rejected']): readonly SpokenFinding[] {
  return rejected.map(({ key, allowed, why }, index) => ({
    id: `rejected-${key}-${index}`,
    key,
    tone: 'fail',
    words: `${capital(why)}. Accepted: ${allowed}.`,
  }));
}

export function letterOf(form: SectionForm, key: string): string {
  return form.dimensions.find((dimension) => dimension.key === key)?.letter ?? key;
}

function spoken(
  finding: CavityFinding,
  form: SectionForm,
  manner: LengthManner,
): { readonly tone: SpokenFinding['tone']; readonly words: string } {
  const letter = letterOf(form, finding.key);
  const label = form.dimensions.find(({ key }) => key === finding.key)?.label.toLowerCase() ?? '';
  const mm = (value: number) => valueWords({ unit: 'length' }, value, manner);
  switch (finding.code) {
    case 'opening-taller-than-cavity':
      return {
        tone: 'fail',
        words: `${letter}: the opening reaches ${mm(finding.openingMm)} up, ${mm(finding.byMm)} higher than the space behind it. Take both again.`,
      };
    case 'opening-wider-than-cavity':
      return {
        tone: 'fail',
        words: `${letter}: the opening (${mm(finding.openingMm)}) is ${mm(finding.byMm)} wider than the widest place behind it. Take both again.`,
      };
    case 'check-disagrees':
      return {
        tone: 'fail',
        words: `${letter} reads ${mm(finding.measuredMm)}; the other letters make it ${mm(finding.derivedMm)}. That is ${mm(Math.abs(finding.byMm))} apart, more than the ±${mm(finding.allowedMm)} of all of them.`,
      };
    case 'readings-differ': {
      const say = (value: number) => valueWords({ unit: finding.unit }, value, manner);
      return {
        tone: 'check',
        words: `${letter}: readings from ${say(finding.smallest)} to ${say(finding.largest)}, further apart than their ±. The one that leaves less room is used.`,
      };
    }
    case 'method-unsuited':
      return {
        tone: 'check',
        words: `${letter}: a laser does not read carpet, foam or glass. Take it with a tape.`,
      };
    case 'taken-above-space':
      return {
        tone: 'note',
        words: `${letter}: taken at ${mm(finding.atMm)}, above the top of the space at ${mm(finding.spaceMm)}. It is not used.`,
      };
    case 'partner-missing': {
      const partners = finding.missing.map((key) => letterOf(form, key)).join(' and ');
      return { tone: 'note', words: `${letter} is used only together with ${partners}.` };
    }
    case 'assumed':
      return {
        tone: 'check',
        words: `${letter}, ${label}: not taken, so ${finding.why}. It costs room until it is measured.`,
      };
  }
}

function capital(words: string): string {
  return words.charAt(0).toUpperCase() + words.slice(1);
}
