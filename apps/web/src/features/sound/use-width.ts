'use client';

import { type RefObject, useEffect, useRef, useState } from 'react';

/** The width that an element has, CSS pixels, and `startPx` until it is known: a chart is drawn for its place. */
export function useWidth<E extends HTMLElement>(startPx: number): readonly [RefObject<E | null>, number] {
  const ref = useRef<E>(null);
  const [widthPx, setWidthPx] = useState(startPx);
  useEffect(() => {
    const element = ref.current;
    if (element === null) return;
    const observer = new ResizeObserver(([entry]) => {
      const width = Math.round(entry?.contentRect.width ?? 0);
      if (width > 0) setWidthPx(width);
    });
    observer.observe(element);
    return () => observer.disconnect();
  }, []);
  return [ref, widthPx];
}
