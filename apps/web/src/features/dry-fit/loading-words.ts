// Sentences for the way in: the verdict first, then the millimetres, then how sure.
import type { CavityResult, SceneAssumption } from '@gusset/contracts/cargo';
import type { LoadingAnswer, LoadingRemedy, MmBracket, TightPlace } from '@gusset/contracts/dry-fit-sheet';
import { degreesFromRad } from '@gusset/units';

type LengthWords = (mm: number) => string;

/** What the sentences read of the car. */
export type KnownCavity = {
  readonly walls: readonly Pick<CavityResult['walls'][number], 'name' | 'plusMinusMm'>[];
  readonly opening: Pick<
    CavityResult['opening'],
    'from' | 'to' | 'heightPlusMinusMm' | 'fromPlusMinusMm' | 'toPlusMinusMm'
  >;
};

export type LoadingHeadline = {
  readonly tone: 'pass' | 'check' | 'fail';
  readonly words: string;
  readonly lines: readonly string[];
};

export function loadingHeadline(
  answer: LoadingAnswer,
  cavity: KnownCavity,
  length: LengthWords,
): LoadingHeadline {
  const place = answer.tightest === null ? [] : [tightWords(answer.tightest, length)];
  switch (answer.verdict) {
    case 'goes-in':
      return {
        tone: 'pass',
        words: 'Goes in, comes out',
        lines: [
          ...spareWords(answer.spare, length),
          ...place,
          'Holds with every ± of the survey against it.',
        ],
      };
    case 'too-close':
      return {
        tone: 'check',
        words: tooCloseWords(answer, length),
        lines: [...place, ...decidingWords(answer, cavity, length)],
      };
    case 'does-not-go-in':
      if (answer.decidedBy === 'place') {
        return {
          tone: 'fail',
          words: 'Does not go in: it does not even stand there',
          lines: [
            'Its place is too small for it with every ± in its favour. The clearances name the surface.',
          ],
        };
      }
      return {
        tone: 'fail',
        words: `Does not go in${shortWords(answer, length)}`,
        lines: [
          ...(answer.decidedBy === 'opening'
            ? ['It is thicker than the opening is high, however it is tipped.']
            : []),
          ...bracketWords(answer.short, length),
          ...place,
          'Holds with every ± of the survey in its favour.',
        ],
      };
  }
}

function spareWords(spare: MmBracket | null, length: LengthWords): string[] {
  if (spare === null || spare.atLeastMm === 0) return [];
  const most = spare.atMostMm === null ? '' : `, less than ${length(spare.atMostMm)}`;
  return [`At least ${length(spare.atLeastMm)} of room all round on the way${most}.`];
}

function shortWords({ short, tightest }: LoadingAnswer, length: LengthWords): string {
  if (short === null || short.atMostMm === null || tightest === null) return '';
  return `: short by ${length(short.atMostMm)}, ${cornerWords(tightest)} on ${lower(tightest.wall)}`;
}

function bracketWords(short: MmBracket | null, length: LengthWords): string[] {
  if (short === null) return [];
  if (short.atMostMm === null) return ['No way was found even with everything round it farther off.'];
  if (short.atLeastMm === 0) return [`With ${length(short.atMostMm)} more room all round it would go in.`];
  return [
    `It would go in with ${length(short.atMostMm)} more room all round, and does not with ${length(short.atLeastMm)}.`,
  ];
}

function tooCloseWords({ asMeasured }: LoadingAnswer, length: LengthWords): string {
  if (asMeasured === 'loads') return 'Too close to call: goes in as measured, not with every ± against it';
  if (asMeasured === 'does-not-load')
    return 'Too close to call: does not go in as measured, but within the ± it may';
  return `Too close to call: no way was found that keeps ${length(1)}, and none was ruled out`;
}

/** The reading that would settle it: of the surface at the tightest place, and how well it is known. */
function decidingWords({ tightest }: LoadingAnswer, cavity: KnownCavity, length: LengthWords): string[] {
  if (tightest === null) return ['Try it with a card panel before anything is cut.'];
  const { walls, opening } = cavity;
  const { wall } = tightest;
  const isEdge = wall.endsWith('edge of the opening');
  const what = isEdge ? `where ${lower(wall)} is` : `to ${lower(wall)}`;
  const plusMinusMm = isEdge
    ? edgePlusMinusMm(opening, wall.startsWith('upper'))
    : walls.find(({ name }) => name === wall)?.plusMinusMm;
  const known = plusMinusMm === undefined ? '' : `, now known to ± ${length(plusMinusMm)}`;
  return [`What would settle it: measure ${what} once more${known}. Or try a card panel.`];
}

/** A survey from before the ends had a ± of their own has that of the height. */
function edgePlusMinusMm({ from, to, ...known }: KnownCavity['opening'], isUpper: boolean): number {
  const toIsUpper = to.yMm > from.yMm;
  const end = isUpper === toIsUpper ? known.toPlusMinusMm : known.fromPlusMinusMm;
  return end ?? known.heightPlusMinusMm;
}

export function tightWords(tightest: TightPlace, length: LengthWords): string {
  const { gapMm, tippedRad, wall } = tightest;
  const turn = Math.round(Math.abs(degreesFromRad(tippedRad)));
  const how = turn === 0 ? 'upright' : `${turn}° tipped`;
  const gap = gapMm < 0 ? `${length(-gapMm)} into` : `${length(gapMm)} from`;
  return `Tightest place: ${cornerWords(tightest)} ${gap} ${lower(wall)}, ${how}, walls as measured.`;
}

const cornerWords = ({ corner }: TightPlace) => `${corner.height} ${corner.end} corner`;

/** As it stands in a sentence. */
const lower = (name: string) => `the ${name.charAt(0).toLowerCase()}${name.slice(1)}`;

/** What is done, then what it costs. */
export function remedyWords(
  {
    kind,
    byMm,
    part,
    costLitres,
    netLitres,
  }: Pick<LoadingRemedy<unknown>, 'kind' | 'byMm' | 'part' | 'costLitres' | 'netLitres'>,
  length: LengthWords,
  litres: (value: number) => string,
): { readonly act: string; readonly cost: string } {
  const by = byMm === null ? '' : length(byMm);
  const acts = {
    height: `Build it ${by} lower`,
    depth: `Build it ${by} shallower`,
    width: `Build it ${by} narrower`,
    clip: `Clip its upper front corner by ${by} both ways`,
    lean: `Take ${by} off its depth at the top`,
    'turn-over': 'Turn it right over on the way',
    'take-out': `Take out ${part === null ? 'what is in the way' : lower(part)} while it goes in`,
  } as const;
  if (costLitres === 0) return { act: acts[kind], cost: 'costs no air' };
  const cost = costLitres > 0 ? `costs ${litres(costLitres)}` : `gains ${litres(-costLitres)}`;
  return { act: acts[kind], cost: `${cost}, leaves ${litres(netLitres)}` };
}

const ASSUMPTIONS: Readonly<Record<SceneAssumption, string>> = {
  'half-plane-beyond-the-opening': 'Behind the opening all is free, as far as three times the box reaches.',
  'lid-at-its-open-angle': 'The lid stands at its measured open angle.',
  'lid-not-measured': 'The open lid was not measured: it is taken to be out of the way.',
  'bumper-as-measured': 'The bumper stands where it was measured.',
  'bumper-not-measured': 'The bumper was not measured: it is taken to be out of the way.',
  'ground-as-measured': 'The ground lies where it was measured.',
  'ground-not-measured': 'The ground was not measured: nothing stands below the opening.',
  'free-only-past-the-bodywork': 'Outside begins past the part of the car that stands out farthest.',
  'floor-carries-the-box': 'The floor carries the box, so its ± lifts both.',
  'in-place-only-left-out': 'Lid arms and zones to keep free count for the box in its place, not on the way.',
  'soft-trim-taken-as-hard': 'Soft trim does not give on the way.',
};

export const assumptionWords = (assumption: SceneAssumption): string => ASSUMPTIONS[assumption];

export const NOT_CONSIDERED =
  'Not considered: swinging the box sideways or rolling it, loading through another door, hands and straps.';
