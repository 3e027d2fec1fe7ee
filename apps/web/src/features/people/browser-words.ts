// A device as its owner would know it, from how its browser names itself. Pure.

const KINDS: readonly (readonly [RegExp, string])[] = [
  [/iPad|Tablet/u, 'A tablet'],
  [/Android(?!.*Mobile)/u, 'A tablet'],
  [/iPhone|Mobile/u, 'A phone'],
  [/Macintosh|Windows|X11|CrOS|Linux/u, 'A computer'],
];

export function browserWords(userAgent: string): string {
  return KINDS.find(([pattern]) => pattern.test(userAgent))?.[1] ?? 'A device that did not say what it is';
}
