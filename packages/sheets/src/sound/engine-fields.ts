// The acoustics engine names its own fields; on this sheet the person finds them elsewhere.
import type { RefusalDetail } from '@gusset/units';
import type { PlacedFilter } from './signal-of.ts';

const PLACES: readonly (readonly [engine: RegExp, sheet: string])[] = [
  [/^enclosure\.(?:chamber|rear)\b.*/, 'targetNet'],
  [/^enclosure\.front\b.*/, 'front.net'],
  [/^enclosure\.(?:port|frontPort)\./, 'port.'],
  [/^enclosure\.rearPort\./, 'rearPort.'],
  [/^enclosure\.radiator\./, 'radiator.'],
  [/^source\.voltageVrms/, 'drive'],
  [/^source\.maxVoltageVrms/, 'amplifier.maxVolts'],
  [/^source\.maxCurrentArms/, 'amplifier.maxAmps'],
  [/^source\./, 'amplifier.'],
  [/^array\.isobaric\b.*/, 'isobaric.coupling'],
  [/^array\./, ''],
  [/^driver\b.*/, 'driverId'],
  [/^cabin\b.*/, 'cabin'],
];
const PARTS: readonly (readonly [engine: RegExp, sheet: string])[] = [
  [/mouth\.(\w+)Mm$/, '$1'],
  [/mouth\.shape$/, 'shape'],
  [/outerEnd\.flareRadiusMm$/, 'outerFlare'],
  [/innerEnd\.flareRadiusMm$/, 'innerFlare'],
  [/sizing\.lengthMm$/, 'length'],
  [/sizing\.tuningHz$/, 'tuning'],
  [/\.cornerHz$/, '.corner'],
  [/\.centreHz$/, '.centre'],
];

/** The same refusal at the field that was typed in. */
export function atSheetField(refusal: RefusalDetail, filters: readonly PlacedFilter[] = []): RefusalDetail {
  const placed = refusal.field.replace(
    /^filters\[(\d+)\]/,
    (whole, index: string) => filters[Number(index)]?.field ?? whole,
  );
  const there = PLACES.find(([engine]) => engine.test(placed));
  const moved = there === undefined ? placed : placed.replace(there[0], there[1]);
  const field = PARTS.reduce((path, [engine, sheet]) => path.replace(engine, sheet), moved);
  return { ...refusal, field };
}
