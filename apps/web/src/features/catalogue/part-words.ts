// What the list of each kind shows beside the name: the figures by which one is chosen from another. Pure.
import { quantityWords } from '@gusset/sheets';
import type { FigureUnit } from '@gusset/units';
import { formatNumber } from '@gusset/units';
import type { PartRow } from './part-calls.ts';

export type ShowLength = (mm: number) => string;

/** The two or three figures by which a part is told from its neighbours, in one line. */
export function keyFigures(part: PartRow, show: ShowLength): string {
  const figure = (value: number | null, unit: FigureUnit): string =>
    value === null ? '' : formatNumber(value, unit);
  const line = (...parts: readonly string[]) => parts.filter((text) => text !== '').join(' · ');
  switch (part.kind) {
    case 'driver': {
      const { nominalInches, nominalOhm, cutoutDiaMm, mountingDepthMm } = part.figures;
      return line(
        nominalInches === null ? '' : `${nominalInches} in`,
        figure(nominalOhm, 'ohm'),
        `cut-out ${show(cutoutDiaMm)}`,
        `depth ${show(mountingDepthMm)}`,
      );
    }
    case 'amplifier': {
      const { channels, ratings } = part.figures;
      const best = ratings.toSorted((a, b) => b.watts - a.watts)[0];
      return line(
        `${channels} ${channels === 1 ? 'channel' : 'channels'}`,
        best === undefined
          ? ''
          : `${formatNumber(best.watts, 'watt')} at ${formatNumber(best.loadOhm, 'ohm')}`,
      );
    }
    case 'processor':
      return line(
        `${part.figures.inputs} in`,
        `${part.figures.outputs} out`,
        figure(part.figures.outputVolts, 'volt'),
      );
    case 'source':
      return line(`${part.figures.preampOutputs} preamp outputs`, figure(part.figures.outputVolts, 'volt'));
    case 'sheet': {
      const { measuredThicknessMm, nominalThicknessMm, lengthMm, widthMm } = part.figures;
      return line(
        measuredThicknessMm === null
          ? `${show(nominalThicknessMm)} nominal, not measured`
          : `${show(measuredThicknessMm)} measured`,
        `${show(lengthMm)} × ${show(widthMm)}`,
      );
    }
    case 'finish':
      return line(part.figures.finish, `${show(part.figures.thicknessMm)} thick`);
    case 'hardware':
      return line(part.figures.use, part.figures.size);
    case 'supply':
      return line(part.figures.use.replaceAll('-', ' '));
  }
}

export function stockWords({ stockQuantity, unit }: PartRow): string {
  return quantityWords({ quantity: stockQuantity, unit });
}
