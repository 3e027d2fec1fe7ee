// How much longer glue takes in the cold: twice as long for every 10 °C, the chemist's rule of thumb, by the steps
// that shops use.
const STEPS: readonly (readonly [number, number])[] = [
  [10, 2],
  [12, 2],
  [15, 1.5],
  [20, 1],
];

/** 1 at 20 °C and above, 1.5 at 15 °C, 2 from 12 °C down; straight lines between. */
export function curingFactor(temperatureC: number): number {
  const [coldest] = STEPS;
  if (coldest !== undefined && temperatureC <= coldest[0]) return coldest[1];
  for (let index = 1; index < STEPS.length; index += 1) {
    const [fromC = 0, from = 1] = STEPS[index - 1] ?? [];
    const [toC = 0, to = 1] = STEPS[index] ?? [];
    if (temperatureC <= toC) return from + ((to - from) * (temperatureC - fromC)) / (toC - fromC);
  }
  return 1;
}
