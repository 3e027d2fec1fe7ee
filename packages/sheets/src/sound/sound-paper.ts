// The sound sheet as its paper takes it: charts, section, figures and words; the title block is the caller's.
import type { ComparedDesign, SoundDesign, SoundResult } from '@gusset/contracts/sound';
import type { SoundSheetInput } from '@gusset/drawings';
import { designName } from './chart-lines.ts';
import { exposureCaution } from './exposure.ts';
import { chartsOf, soundChart } from './sound-charts.ts';
import { portWords } from './sound-figures.ts';
import { soundSection } from './sound-section.ts';
import { amplifierWords, findingWords, soundHeadline } from './sound-words.ts';

export type SoundPaper = Omit<SoundSheetInput, 'paper' | 'language' | 'titleBlock'>;

const hertz = (value: number | null): string => (value === null ? '–' : `${value.toFixed(1)} Hz`);
const litres = (value: number | null): string => (value === null ? '–' : `${value.toFixed(1)} L`);

/** `design` is what was entered for `result`. */
export function soundPaper(design: SoundDesign, result: SoundResult): SoundPaper {
  const letters = result.variants.map(({ letter }) => letter);
  const choice = { isFreeAir: false, isBrief: false, letters, issued: null, spread: null };
  const charts = chartsOf(result).filter((chart) => chart !== 'level');
  const { words, detail } = soundHeadline(result);
  return {
    verdict: words,
    detail,
    level: soundChart('level', result, choice),
    others: charts.map((chart) => soundChart(chart, result, choice)),
    section: soundSection(design, result),
    figures: figuresOf(result),
    designs: designsOf(result),
    notes: [amplifierWords(result), ...result.findings.map(findingWords)].filter((line) => line !== null),
    caution: exposureCaution(result.loudestDb),
  };
}

function figuresOf(result: SoundResult): SoundPaper['figures'] {
  const { chambers, qtc, fcHz, f3Hz, ports, radiator, travelLimitWatts } = result;
  const roles = { only: 'Net volume', rear: 'Net behind the drivers', front: 'Net in front' } as const;
  const rows: (readonly [label: string, value: string | null])[] = [
    ['Drivers', `${result.count} × ${result.driverName}`],
    ...chambers.map(({ role, netLitres }) => [roles[role], litres(netLitres)] as const),
    ...ports.map((port) => [`Port, ${hertz(port.tuningHz)}`, portWords(port)] as const),
    [
      'Radiators',
      radiator === null
        ? null
        : `${radiator.count}, +${radiator.addedMassGrams} g, ${hertz(radiator.tuningHz)}`,
    ],
    ['System Q', qtc === null ? null : qtc.toFixed(2)],
    ['Resonance in the box', fcHz === null ? null : hertz(fcHz)],
    ['Corner, −3 dB outdoors', f3Hz === null ? null : hertz(f3Hz)],
    ['Power', `${Math.round(result.driveWatts)} W, ${result.driveVolts.toFixed(1)} V`],
    ['Load', `${result.rdcOhm.toFixed(2)} Ω DC`],
    ['Cone travel allows', travelLimitWatts === null ? null : `${Math.round(travelLimitWatts)} W`],
  ];
  return rows.flatMap(([label, value]) => (value === null ? [] : [{ label, value }]));
}

function designsOf(result: SoundResult): SoundPaper['designs'] {
  const head = ['Design', 'Net', 'Tuned', 'Reaches', 'Loudest'];
  if (result.variants.length === 0) return { head, rows: [] };
  const row = (name: string, design: Omit<ComparedDesign, 'curves'>): readonly string[] => [
    name,
    litres(design.netLitres),
    hertz(design.tuningHz),
    design.reachesHz === null ? '< 10 Hz' : hertz(design.reachesHz),
    `${design.loudestDb.toFixed(1)} dB`,
  ];
  return {
    head,
    rows: [
      row(designName(result, result), result),
      ...result.variants.flatMap((variant) =>
        variant.state === 'ready' ? [row(designName(variant, variant.design), variant.design)] : [],
      ),
    ],
  };
}
