'use client';

import { type ResponseChartInput, responseChart } from '@gusset/drawings';
import { useMemo } from 'react';
import { SceneDrawing } from '../../shared/sheet/scene-drawing.tsx';
import { PHONE_WIDTH, useMediaQuery } from '../../shared/shell/use-media-query.ts';

const WIDE = { widthPt: 780, heightPt: 340, textPt: 11 } as const;
const NARROW = { widthPt: 400, heightPt: 300, textPt: 12 } as const;

/** A chart of sweeps, drawn for the width it has. */
export function SweepChart({ input }: { readonly input: ResponseChartInput }) {
  const isPhone = useMediaQuery(PHONE_WIDTH);
  const scene = useMemo(() => responseChart(input, isPhone ? NARROW : WIDE), [input, isPhone]);
  return <SceneDrawing scene={scene} minWidthPx={isPhone ? 0 : 520} />;
}
