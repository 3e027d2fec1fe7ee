// The figures that people know the sheet by: what a revision delta compares and lists.
import {
  ENCLOSURE_WORDS,
  type SoundFacts,
  type SoundPortResult,
  type SoundResult,
  toSoundResult,
} from '@gusset/contracts/sound';
import type { KeyFigure } from '../sheet-definition.ts';

const ROLE_WORDS: Readonly<Record<SoundPortResult['role'], string>> = {
  port: 'Port',
  'front-port': 'Front port',
  'rear-port': 'Rear port',
};

export function soundKeyFigures(kept: SoundResult): readonly KeyFigure[] {
  const result = toSoundResult(kept);
  const { qtc, f3Hz, netLitres, radiator } = result;
  return [
    {
      key: 'driver',
      label: 'Drivers',
      value: `${result.count} × ${result.driverName}${result.isobaric ? ', one behind the other' : ''}`,
    },
    { key: 'enclosure', label: 'Enclosure', value: ENCLOSURE_WORDS[result.enclosure] },
    ...(netLitres === null
      ? []
      : [{ key: 'net', label: 'Net volume wanted', value: `${netLitres.toFixed(1)} L` }]),
    ...chamberFigures(result),
    ...result.ports.flatMap(portFigures),
    ...(radiator === null
      ? []
      : [
          {
            key: 'radiator',
            label: 'Passive radiators',
            value: `${radiator.count}, ${radiator.addedMassGrams} g added, tuned ${radiator.tuningHz.toFixed(1)} Hz`,
          },
        ]),
    { key: 'power', label: 'Power', value: `${Math.round(result.driveWatts)} W` },
    ...(qtc === null ? [] : [{ key: 'qtc', label: 'System Q', value: qtc.toFixed(2) }]),
    ...(f3Hz === null ? [] : [{ key: 'f3', label: 'Corner', value: `${f3Hz.toFixed(1)} Hz` }]),
    { key: 'load', label: 'Load', value: `${result.rdcOhm.toFixed(2)} Ω` },
  ];
}

/** Told apart only where there are two. */
function chamberFigures({ chambers }: SoundResult): readonly KeyFigure[] {
  return chambers
    .filter(({ role }) => role !== 'only')
    .map(({ role, netLitres }) => ({
      key: `chamber.${role}`,
      label: role === 'rear' ? 'Chamber behind' : 'Chamber in front',
      value: `${netLitres.toFixed(1)} L`,
    }));
}

function portFigures(port: SoundPortResult): readonly KeyFigure[] {
  const label = ROLE_WORDS[port.role];
  return [
    { key: port.role, label, value: portWords(port) },
    { key: `${port.role}.tuning`, label: `${label}, tuning`, value: `${port.tuningHz.toFixed(1)} Hz` },
  ];
}

/** `2 × ⌀ 76 × 210 mm`. */
export function portWords(port: Omit<SoundPortResult, 'role' | 'chamber'>): string {
  const mouth =
    port.diameterMm === null
      ? `${figure(port.widthMm)} × ${figure(port.heightMm)}`
      : `⌀ ${figure(port.diameterMm)}`;
  return `${port.count} × ${mouth} × ${figure(port.lengthMm)} mm`;
}

const figure = (mm: number | null): string => String(Number((mm ?? 0).toFixed(1))).replace('-', '−');

export function soundFactFigures({
  driver,
  otherDrivers = [],
  longestCabinM,
  cabinCurve = null,
}: SoundFacts): readonly KeyFigure[] {
  const cabin: KeyFigure = {
    key: 'cabin',
    label: 'Longest inside length',
    value: longestCabinM === null ? 'not known' : `${longestCabinM} m`,
  };
  const measured: readonly KeyFigure[] =
    cabinCurve === null ? [] : [{ key: 'cabin.measured', label: 'Measured cabin', value: cabinCurve.label }];
  const all = [...(driver === null ? [] : [driver]), ...otherDrivers.filter(({ id }) => id !== driver?.id)];
  const sheets = all.flatMap(({ id, name, figures }) =>
    Object.entries(figures.dataSheet).map(([key, value]) => ({
      key: id === driver?.id ? `driver.${key}` : `driver.${id}.${key}`,
      label: `${name} · ${key}`,
      value: value === null ? 'not given' : String(value),
    })),
  );
  const chosen = driver === null ? [] : [{ key: 'driver', label: 'Driver', value: driver.name }];
  return [...chosen, ...sheets, cabin, ...measured];
}
