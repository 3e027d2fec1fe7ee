'use client';

import type { BoxInput } from '@gusset/contracts/box';
import { useQuery } from '@tanstack/react-query';
import { ComboBox } from '../../shared/controls/combo-box.tsx';
import { FieldGrid } from '../../shared/controls/field-frame.tsx';
import { LengthField } from '../../shared/controls/length-field.tsx';
import { Select } from '../../shared/controls/select.tsx';
import { useTRPC } from '../../shared/data/api-client.ts';
import { keptLength, type LengthRule } from '../../shared/job/length-rule.ts';
import type { SettingsProps } from './box-details.tsx';
import type { BoxJobSheet } from './box-types.ts';

type Cup = NonNullable<BoxInput['terminalCup']>;

const SHAPES = [
  { id: 'none', label: 'None' },
  { id: 'circle', label: 'Round' },
  { id: 'rectangle', label: 'Rectangular' },
] as const;
const FACES = [
  { id: 'back', label: 'Back' },
  { id: 'front', label: 'Front' },
  { id: 'top', label: 'Top' },
  { id: 'left', label: 'Left side' },
  { id: 'right', label: 'Right side' },
] as const;
/** A common small cup; each figure is there to be typed over. */
const USUAL = { diameterMm: 70, widthMm: 80, heightMm: 60, depthMm: 30, upMm: 80 };
const MOST_TERMINALS = 200;

export function terminalSummary({ input }: BoxJobSheet): string {
  const cup = input.terminalCup;
  if (cup === null) return 'none';
  const face = FACES.find(({ id }) => id === cup.face)?.label.toLowerCase() ?? cup.face;
  return `${cup.cutout.shape === 'circle' ? 'round' : 'rectangular'}, ${face}, ${cup.at === null ? 'low and clear of the braces' : 'placed by hand'}`;
}

export function TerminalSettings({ sheet, errorOf, rule }: SettingsProps) {
  const trpc = useTRPC();
  const hardware = useQuery(trpc.part.hardware.list.queryOptions({ limit: MOST_TERMINALS }));
  const { input, change, mayEdit } = sheet;
  const cup = input.terminalCup;
  const set = (changes: Partial<Cup>) => {
    if (cup !== null) change({ terminalCup: { ...cup, ...changes } });
  };
  const terminals = (hardware.data?.rows ?? [])
    .filter(({ figures }) => figures.use === 'terminal')
    .map(({ id, maker, name }) => ({ id, label: `${maker} ${name}`.trim() }));
  return (
    <FieldGrid cellMinPx={180}>
      <Select
        label="Cut-out"
        options={SHAPES}
        value={cup?.cutout.shape ?? 'none'}
        onChange={(shape) =>
          change({
            terminalCup:
              shape === 'none' ? null : { ...(cup ?? usualCup(rule)), cutout: usualCutout(shape, rule) },
          })
        }
        isDisabled={!mayEdit}
      />
      {cup === null ? null : (
        <>
          <Select
            label="Face"
            options={FACES}
            value={cup.face}
            onChange={(face) => set({ face })}
            isDisabled={!mayEdit}
            error={errorOf('terminalCup.face')}
          />
          <Cutout cup={cup} set={set} errorOf={errorOf} isReadOnly={!mayEdit} />
          <LengthField
            label="Reaches inside"
            value={cup.insideDepth}
            maxMm={1_000}
            onCommit={(length) => {
              const insideDepth = keptLength(length);
              if (insideDepth !== null) set({ insideDepth });
            }}
            isReadOnly={!mayEdit}
            error={errorOf('terminalCup.insideDepth')}
          />
          <TerminalPlace cup={cup} set={set} errorOf={errorOf} isReadOnly={!mayEdit} rule={rule} />
          <ComboBox
            key={`terminal ${terminals.length}`}
            label="Which part"
            isOptional
            options={terminals}
            value={cup.partId}
            onChange={(partId) => set({ partId })}
            isSearching={hardware.isPending}
            noMatch="No terminal in the catalogue; add it in Parts"
            isDisabled={!mayEdit}
          />
        </>
      )}
    </FieldGrid>
  );
}

type CutoutProps = {
  readonly cup: Cup;
  readonly set: (changes: Partial<Cup>) => void;
  readonly errorOf: (field: string) => string | null;
  readonly isReadOnly: boolean;
};

function Cutout({ cup, set, errorOf, isReadOnly }: CutoutProps) {
  const { cutout } = cup;
  if (cutout.shape === 'circle') {
    return (
      <LengthField
        label="Diameter"
        value={cutout.diameter}
        maxMm={2_000}
        onCommit={(length) => {
          const diameter = keptLength(length);
          if (diameter !== null) set({ cutout: { shape: 'circle', diameter } });
        }}
        isReadOnly={isReadOnly}
        error={errorOf('terminalCup.cutout.diameter')}
      />
    );
  }
  return (
    <>
      {(['width', 'height'] as const).map((way) => (
        <LengthField
          key={way}
          label={way === 'width' ? 'Width' : 'Height'}
          value={cutout[way]}
          maxMm={2_000}
          onCommit={(length) => {
            const kept = keptLength(length);
            if (kept !== null) set({ cutout: { ...cutout, [way]: kept } });
          }}
          isReadOnly={isReadOnly}
          error={errorOf(`terminalCup.cutout.${way}`)}
        />
      ))}
    </>
  );
}

const PLACES = [
  { id: 'low', label: 'Low, clear of the braces' },
  { id: 'hand', label: 'By hand' },
] as const;

/** Its centre: on a wall across from the centre line and up from the lower edge, on a side by the side view. */
function TerminalPlace({ cup, set, errorOf, isReadOnly, rule }: CutoutProps & { readonly rule: LengthRule }) {
  const { at } = cup;
  const isOnSide = cup.face === 'left' || cup.face === 'right';
  const middle = { across: lengthOf(0, rule), up: lengthOf(USUAL.upMm, rule) };
  return (
    <>
      <Select
        label="Where on the face"
        options={PLACES}
        value={at === null ? 'low' : 'hand'}
        onChange={(place) => set({ at: place === 'low' ? null : middle })}
        isDisabled={isReadOnly}
        error={errorOf('terminalCup.at')}
      />
      {at === null
        ? null
        : (['across', 'up'] as const).map((way) => (
            <LengthField
              key={way}
              label={way === 'up' ? 'Centre, up' : isOnSide ? 'Centre, from the back' : 'Centre, across'}
              value={at[way]}
              minMm={-20_000}
              maxMm={20_000}
              onCommit={(length) => {
                const kept = keptLength(length);
                if (kept !== null) set({ at: { ...at, [way]: kept } });
              }}
              isReadOnly={isReadOnly}
            />
          ))}
    </>
  );
}

const lengthOf = (mm: number, { write, unit }: LengthRule) => ({ mm, typed: write(mm), unit });

function usualCup(rule: LengthRule): Cup {
  return {
    partId: null,
    face: 'back',
    cutout: usualCutout('circle', rule),
    insideDepth: lengthOf(USUAL.depthMm, rule),
    at: null,
  };
}

function usualCutout(shape: 'circle' | 'rectangle', rule: LengthRule): Cup['cutout'] {
  return shape === 'circle'
    ? { shape, diameter: lengthOf(USUAL.diameterMm, rule) }
    : { shape, width: lengthOf(USUAL.widthMm, rule), height: lengthOf(USUAL.heightMm, rule) };
}
