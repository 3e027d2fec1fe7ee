'use client';

import { BoxScreen, type BoxScreenProps } from '../../../../../features/box/box-screen.tsx';
import { LoadingPanel } from '../../../../../features/dry-fit/loading-panel.tsx';

/** Sheet 04 with its way in and out. */
export function BoxWithWay(props: Omit<BoxScreenProps, 'wayIn'>) {
  return (
    <BoxScreen
      {...props}
      wayIn={(sheet, rule) => <LoadingPanel sheet={sheet} rule={rule} jobId={props.opened.job.id} />}
    />
  );
}
