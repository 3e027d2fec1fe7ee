'use client';

import { defaultRangeExtractor, useWindowVirtualizer } from '@tanstack/react-virtual';
import { useLayoutEffect, useRef, useState } from 'react';
import { useMediaQuery } from '../shell/use-media-query.ts';

const ROW_PX = 52;
const OVERSCAN_ROWS = 8;
/** Strip and table header, which stick over the rows. */
const STICKY_PX = 112;

export type RowPlace = {
  readonly index: number;
  /** From the top of the body; null where rows lie in flow (on paper). */
  readonly startPx: number | null;
};

/** Which rows are in the page and where, which one has the keyboard, and how to move there. */
export function useRowWindow(count: number) {
  const bodyRef = useRef<HTMLTableSectionElement>(null);
  const [bodyTopPx, setBodyTopPx] = useState(0);
  const [active, setActive] = useState(0);
  const wantsFocus = useRef(false);
  const isPrinting = useMediaQuery('print');
  const activeRow = Math.max(0, Math.min(active, count - 1));

  useLayoutEffect(() => {
    const top = bodyRef.current?.getBoundingClientRect().top ?? 0;
    setBodyTopPx(top + window.scrollY);
  }, []);

  const virtual = useWindowVirtualizer({
    count,
    estimateSize: () => ROW_PX,
    overscan: OVERSCAN_ROWS,
    scrollMargin: bodyTopPx,
    scrollPaddingStart: STICKY_PX,
    // The row that has the focus stays in the page wherever it is, or the focus would be lost with it.
    rangeExtractor: (range) =>
      [...new Set([activeRow, ...defaultRangeExtractor(range)])].sort((a, b) => a - b),
  });

  useLayoutEffect(() => {
    const row = bodyRef.current?.querySelector<HTMLElement>(`[data-index="${activeRow}"]`);
    if (!wantsFocus.current || !row) return;
    wantsFocus.current = false;
    row.focus({ preventScroll: true });
  });

  const moveTo = (index: number): void => {
    wantsFocus.current = true;
    setActive(index);
    virtual.scrollToIndex(index, { align: 'auto' });
  };

  const places: readonly RowPlace[] = isPrinting
    ? Array.from({ length: count }, (_, index) => ({ index, startPx: null }))
    : virtual
        .getVirtualItems()
        .map(({ index, start }) => ({ index, startPx: start - virtual.options.scrollMargin }));

  return {
    bodyRef,
    places,
    heightPx: isPrinting ? null : virtual.getTotalSize(),
    measure: virtual.measureElement,
    activeRow,
    setActive,
    moveTo,
  };
}
