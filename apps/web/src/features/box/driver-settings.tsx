'use client';

import type { BoxInput } from '@gusset/contracts/box';
import { Button } from '../../shared/controls/button.tsx';
import { FieldGrid } from '../../shared/controls/field-frame.tsx';
import { LengthField } from '../../shared/controls/length-field.tsx';
import { NumberField } from '../../shared/controls/number-field.tsx';
import { Select } from '../../shared/controls/select.tsx';
import { keptLength, type LengthRule } from '../../shared/job/length-rule.ts';
import type { SettingsProps } from './box-details.tsx';
import styles from './box-screen.module.css';
import type { BoxJobSheet } from './box-types.ts';

const FACES = [
  { id: 'front', label: 'Front, toward the opening' },
  { id: 'back', label: 'Back, toward the seat' },
  { id: 'top', label: 'Top, firing up' },
  { id: 'slope-1', label: 'The leaning wall' },
] as const;
const MOUNTS = [
  { id: 'surface', label: 'On the surface' },
  { id: 'flush', label: 'Let in flush' },
] as const;
const FIXINGS = [
  { id: 'none', label: 'Not decided', holeMm: 0 },
  { id: 'screw', label: 'Screws', holeMm: 3 },
  { id: 't-nut', label: 'T-nuts', holeMm: 7 },
  { id: 'insert', label: 'Threaded inserts', holeMm: 8 },
] as const;
/** Flange of an ordinary M5 T-nut. */
const T_NUT_FLANGE_MM = 19;

const OFFSETS = { minMm: -20_000, maxMm: 20_000 };

/** Of an L, the upright above its foot is meant; boxes of four walls have neither. */
function facesOf(shape: BoxInput['shape']) {
  if (shape === 'l') {
    return FACES.map((face) =>
      face.id === 'slope-1' ? { ...face, label: 'The upright above the foot' } : face,
    );
  }
  return FACES.filter(({ id }) => id !== 'slope-1' || shape === 'clipped-wedge');
}

export function driverSummary({ input, data }: BoxJobSheet, { words }: LengthRule): string {
  const { driver } = data.facts;
  const count = data.upstream.sound?.count ?? 0;
  const who = driver === null || count === 0 ? 'none chosen on sheet 03' : `${count} × ${driver.name}`;
  const face =
    FACES.find(({ id }) => id === input.baffle.face)
      ?.label.split(',')[0]
      ?.toLowerCase() ?? '';
  const mount = input.drivers.mount === 'flush' ? 'let in flush' : 'on the surface';
  const where = input.drivers.positions === null ? 'even row' : 'placed by hand';
  return `${who}, ${face}, ${mount}, ${where}, cut-out + ${words(input.drivers.cutoutClearance.mm)}`;
}

export function DriverSettings({ sheet, errorOf, rule }: SettingsProps) {
  const { input, change, mayEdit } = sheet;
  const { drivers } = input;
  const set = (changes: Partial<BoxInput['drivers']>) => change({ drivers: { ...drivers, ...changes } });
  const lock = { isReadOnly: !mayEdit };
  return (
    <>
      <FieldGrid cellMinPx={190}>
        <Select
          label="Baffle"
          options={facesOf(input.shape)}
          value={input.baffle.face}
          onChange={(face) => change({ baffle: { ...input.baffle, face } })}
          isDisabled={!mayEdit}
          error={errorOf('baffle.face')}
        />
        <Select
          label="Mounted"
          options={MOUNTS}
          value={drivers.mount}
          onChange={(mount) => set({ mount })}
          isDisabled={!mayEdit}
          error={errorOf('drivers')}
        />
        <Select
          label="Held by"
          options={FIXINGS.map(({ id, label }) => ({ id, label }))}
          value={drivers.fixing?.kind ?? 'none'}
          onChange={(kind) => set({ fixing: kind === 'none' ? null : usualFixing(kind, rule) })}
          isDisabled={!mayEdit}
        />
        {drivers.fixing === null ? null : (
          <LengthField
            label={drivers.fixing.kind === 'screw' ? 'Pilot hole' : 'Hole in the baffle'}
            value={drivers.fixing.hole}
            maxMm={100}
            onCommit={(length) => {
              const hole = keptLength(length);
              if (hole !== null && drivers.fixing !== null) set({ fixing: { ...drivers.fixing, hole } });
            }}
            error={errorOf('drivers.fixing.hole')}
            {...lock}
          />
        )}
        {drivers.fixing?.kind === 't-nut' ? (
          <LengthField
            label="Flange of the T-nut"
            value={drivers.fixing.flange}
            maxMm={100}
            onCommit={(length) => {
              if (drivers.fixing !== null) set({ fixing: { ...drivers.fixing, flange: keptLength(length) } });
            }}
            error={errorOf('drivers.fixing.flange')}
            {...lock}
          />
        ) : null}
        <LengthField
          label="Cut-out larger by"
          hint="Than the maker’s figure, on the diameter"
          value={drivers.cutoutClearance}
          maxMm={100}
          onCommit={(length) => {
            const cutoutClearance = keptLength(length);
            if (cutoutClearance !== null) set({ cutoutClearance });
          }}
          error={errorOf('drivers.cutoutClearance')}
          {...lock}
        />
        <LengthField
          label="Grille stands off"
          isOptional
          hint="Its inner face from the finished baffle"
          value={drivers.grilleStandOff}
          maxMm={1_000}
          onCommit={(length) => set({ grilleStandOff: keptLength(length) })}
          error={errorOf('drivers.grilleStandOff')}
          {...lock}
        />
        <NumberField
          label="Low-pass corner"
          unit="hertz"
          hint="Walls should ring above twice this"
          value={input.lowPassHz}
          min={20}
          max={2_000}
          step={5}
          digits={0}
          onCommit={(figure) => {
            if (figure !== null) change({ lowPassHz: figure.value });
          }}
          {...lock}
        />
      </FieldGrid>
      <Positions sheet={sheet} errorOf={errorOf} rule={rule} />
    </>
  );
}

function usualFixing(kind: 'screw' | 't-nut' | 'insert', { write, unit }: LengthRule) {
  const lengthOf = (mm: number) => ({ mm, typed: write(mm), unit });
  const holeMm = FIXINGS.find(({ id }) => id === kind)?.holeMm ?? 0;
  return { kind, hole: lengthOf(holeMm), flange: kind === 't-nut' ? lengthOf(T_NUT_FLANGE_MM) : null };
}

/** By hand: the even row's own places to begin with, then each typed. */
function Positions({ sheet, errorOf, rule }: SettingsProps) {
  const { input, change, mayEdit, result } = sheet;
  const { positions } = input.drivers;
  const problem = errorOf('drivers.positions');
  const set = (next: BoxInput['drivers']['positions']) =>
    change({ drivers: { ...input.drivers, positions: next } });
  if (positions === null) {
    const rows = result?.box.drivers ?? [];
    if (rows.length === 0 || !mayEdit) return null;
    const lengthOf = (mm: number) => ({ mm, typed: rule.write(mm), unit: rule.unit });
    return (
      <div className={styles.acts}>
        <Button
          onPress={() => set(rows.map(({ zMm, upMm }) => ({ across: lengthOf(zMm), up: lengthOf(upMm) })))}
        >
          Place the drivers by hand
        </Button>
      </div>
    );
  }
  return (
    <fieldset className={styles.group}>
      <legend className="caption">Centres, across from the centre line and up from the lower edge</legend>
      {problem === null ? null : <p role="alert">{problem}</p>}
      <FieldGrid cellMinPx={170}>
        {positions.flatMap((position, index) =>
          (['across', 'up'] as const).map((way) => (
            <LengthField
              // biome-ignore lint/suspicious/noArrayIndexKey: drivers have no other name than their number.
              key={`${index} ${way}`}
              label={`Driver ${index + 1}, ${way}`}
              value={position[way]}
              {...OFFSETS}
              onCommit={(length) => {
                const kept = keptLength(length);
                if (kept === null) return;
                set(positions.map((other, at) => (at === index ? { ...other, [way]: kept } : other)));
              }}
              isReadOnly={!mayEdit}
            />
          )),
        )}
      </FieldGrid>
      {mayEdit ? (
        <div className={styles.acts}>
          <Button onPress={() => set(null)}>Back to an even row</Button>
        </div>
      ) : null}
    </fieldset>
  );
}
