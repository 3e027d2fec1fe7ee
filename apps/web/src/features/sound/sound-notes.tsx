'use client';

import type { SoundPortResult, SoundResult } from '@gusset/contracts/sound';
import { amplifierWords, exposureCaution, findingWords } from '@gusset/sheets';
import { formatLength, formatVolume } from '@gusset/units';
import { Caution } from '../../shared/marks/caution.tsx';
import { Row, Rows } from '../../shared/marks/row.tsx';
import { Verdict } from '../../shared/marks/verdict.tsx';
import { useDisplay } from '../../shared/shell/display-provider.tsx';
import styles from './sound-screen.module.css';

export type SoundNotesProps = { readonly result: SoundResult | null };

/** The figures an engineer looks for, the ports as they must be built, what to mind. */
export function SoundNotes({ result }: SoundNotesProps) {
  if (result === null) return null;
  const lines = [amplifierWords(result), ...result.findings.map(findingWords)].filter(
    (line) => line !== null,
  );
  return (
    <div className={styles.notes}>
      <System result={result} />
      {result.ports.map((port) => (
        <PortRows key={port.role} port={port} />
      ))}
      <RadiatorRows result={result} />
      <ul className={styles.findings}>
        {lines.map((line) => (
          <li key={line}>{line}</li>
        ))}
      </ul>
      <Contradictions result={result} />
      <Caution>{exposureCaution(result.loudestDb)}</Caution>
    </div>
  );
}

const litres = (value: number) => formatVolume(value, 'metric', { both: true });
const hertz = (value: number) => `${value.toFixed(1)} Hz`;

const CHAMBER_WORDS = { only: 'Net volume', rear: 'Behind the drivers', front: 'In front of them' } as const;

function System({ result }: { readonly result: SoundResult }) {
  const { qtc, fcHz, f3Hz, tuningHz, rearTuningHz, netLitres, chambers } = result;
  return (
    <Rows title="System">
      {chambers.map(({ role, netLitres: air }) => (
        <Row key={role} label={CHAMBER_WORDS[role]}>
          {litres(air)}
        </Row>
      ))}
      {chambers.length > 1 && netLitres !== null ? (
        <Row label="Net volume together">{litres(netLitres)}</Row>
      ) : null}
      {qtc === null ? null : <Row label="System Q">{qtc.toFixed(2)}</Row>}
      {fcHz === null ? null : <Row label="Resonance in the box">{hertz(fcHz)}</Row>}
      {tuningHz === null ? null : (
        <Row label={rearTuningHz === null ? 'Tuned to' : 'Front tuned to'}>{hertz(tuningHz)}</Row>
      )}
      {rearTuningHz === null ? null : <Row label="Rear tuned to">{hertz(rearTuningHz)}</Row>}
      {f3Hz === null ? null : <Row label="Corner, −3 dB outdoors">{hertz(f3Hz)}</Row>}
      <Row label="Load at the amplifier">{result.rdcOhm.toFixed(2)} Ω DC</Row>
      <Row label="Most current">{result.amplifier.mostAmps.toFixed(1)} A</Row>
      {result.travelLimitWatts === null ? null : (
        <Row label="Cone travel allows">{Math.round(result.travelLimitWatts)} W</Row>
      )}
      <Row label="Driver takes from the box">
        {formatVolume(result.displacementLitres, 'metric', { both: false })}
      </Row>
    </Rows>
  );
}

const PORT_TITLES = { port: 'Port', 'front-port': 'Front port', 'rear-port': 'Rear port' } as const;

function PortRows({ port }: { readonly port: SoundPortResult }) {
  const { lengthUnit, shop } = useDisplay();
  const length = (mm: number) =>
    formatLength(mm, { unit: lengthUnit, denominator: shop.inchDenominator, style: 'drawing' });
  const mouth =
    port.diameterMm === null
      ? `${length(port.widthMm ?? 0)} × ${length(port.heightMm ?? 0)}`
      : `⌀ ${length(port.diameterMm)}`;
  return (
    <Rows title={PORT_TITLES[port.role]}>
      <Row label={port.count === 1 ? 'Opening' : `${port.count} openings`}>{mouth}</Row>
      <Row label="Length, flares included" tone={port.buildable ? 'mark' : 'pencil'}>
        {length(port.lengthMm)}
      </Row>
      <Row label="Air at most">{port.fastestMps.toFixed(1)} m/s</Row>
      <Row label="Its air takes from the box">{formatVolume(port.airLitres, 'metric', { both: false })}</Row>
    </Rows>
  );
}

function RadiatorRows({ result: { radiator } }: { readonly result: SoundResult }) {
  if (radiator === null) return null;
  return (
    <Rows title="Passive radiators">
      <Row label="How many">{radiator.count}</Row>
      <Row label="Mass added to each">{radiator.addedMassGrams} g</Row>
      <Row label="Silent at">{hertz(radiator.notchHz)}</Row>
    </Rows>
  );
}

function Contradictions({ result: { contradictions } }: { readonly result: SoundResult }) {
  if (contradictions.length === 0) return null;
  return (
    <Verdict tone="check" words="The data sheet contradicts itself">
      {contradictions.map(({ field, given, implied, percent }) => (
        <p key={field}>
          {field}: given {given.toPrecision(4)}, the other figures say {implied.toPrecision(4)} (
          {percent > 0 ? '+' : ''}
          {percent.toFixed(0)} %)
        </p>
      ))}
    </Verdict>
  );
}
