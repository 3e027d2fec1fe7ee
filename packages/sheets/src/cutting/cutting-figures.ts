// The cutting sheet in the figures that people know it by.
import type { CuttingFacts, CuttingResult } from '@gusset/contracts/cutting-sheet';
import type { KeyFigure } from '../sheet-definition.ts';

export function cuttingKeyFigures(result: CuttingResult): readonly KeyFigure[] {
  return [
    ...result.sheetsUsed.map(({ partId, name, count }) => ({
      key: `sheets.${partId}`,
      label: name,
      value: `${count} ${count === 1 ? 'sheet' : 'sheets'}`,
    })),
    { key: 'pieces', label: 'Pieces', value: String(result.pieces) },
    ...result.boards.map(({ boardId, name, thicknessMm, isMeasured }) => ({
      key: `thickness.${boardId}`,
      label: `${name}, thickness`,
      value: `${thicknessMm} mm${isMeasured ? '' : ', nominal'}`,
    })),
    { key: 'kerf', label: 'Kerf', value: `${result.kerfMm} mm` },
    { key: 'trim', label: 'Trim', value: `${result.trimMm} mm` },
    { key: 'offcutsUsed', label: 'Offcuts from the rack', value: String(result.totals.offcutsUsed) },
    { key: 'mass', label: 'Mass of the parts', value: `${result.massKg.toFixed(1)} kg` },
  ];
}

export function cuttingFactFigures({ boards, saw }: CuttingFacts): readonly KeyFigure[] {
  return [
    ...boards.flatMap(({ id, name, figures }) => [
      {
        key: `board.${id}.thickness`,
        label: `${name}, thickness`,
        value:
          figures.measuredThicknessMm === null
            ? `${figures.nominalThicknessMm} mm, nominal`
            : `${figures.measuredThicknessMm} mm, measured`,
      },
      {
        key: `board.${id}.size`,
        label: `${name}, size`,
        value: `${figures.lengthMm} × ${figures.widthMm} mm`,
      },
      { key: `board.${id}.grain`, label: `${name}, grain`, value: figures.grain },
    ]),
    { key: 'saw.kerf', label: 'Saw · kerf', value: `${saw.kerfMm} mm` },
    { key: 'saw.trim', label: 'Saw · trim', value: `${saw.trimMm} mm` },
    { key: 'saw.tilt', label: 'Saw · blade tilt', value: `${saw.bladeMaxTiltDeg}°` },
  ];
}
