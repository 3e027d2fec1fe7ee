'use client';

import { BOX_FACES, type BoxFaceName, type BoxInput } from '@gusset/contracts/box';
import { useQuery } from '@tanstack/react-query';
import { Checkbox } from '../../shared/controls/checkbox.tsx';
import { FieldGrid } from '../../shared/controls/field-frame.tsx';
import { Select } from '../../shared/controls/select.tsx';
import { useTRPC } from '../../shared/data/api-client.ts';
import type { SettingsProps } from './box-details.tsx';
import type { BoxJobSheet } from './box-types.ts';

const FACE_WORDS: Readonly<Record<BoxFaceName, string>> = {
  front: 'Front',
  back: 'Back',
  top: 'Top',
  bottom: 'Bottom',
  left: 'Left side',
  right: 'Right side',
  slopes: 'Slopes and steps',
};
const BARE = 'bare';
const MIXED = 'mixed';
const MOST_FINISHES = 100;

/** Only some shapes have a wall that is none of the six. */
function shownFaces({ shape }: BoxInput): readonly BoxFaceName[] {
  const hasSlopes = shape === 'clipped-wedge' || shape === 'l';
  return BOX_FACES.filter((face) => face !== 'slopes' || hasSlopes);
}

export function finishSummary({ input, data }: BoxJobSheet): string {
  const faces = shownFaces(input);
  const named = faces.filter((face) => input.finishes[face] !== null);
  if (named.length === 0) return 'bare wood';
  const names = [...new Set(named.map((face) => input.finishes[face]))].map(
    (id) => data.facts.finishes.find((finish) => finish.id === id)?.name ?? 'a finish no longer listed',
  );
  return `${names.join(', ')} on ${named.length === faces.length ? 'all faces' : `${named.length} faces`}`;
}

export function FinishSettings({ sheet, errorOf }: SettingsProps) {
  const trpc = useTRPC();
  const finishes = useQuery(trpc.part.finish.list.queryOptions({ limit: MOST_FINISHES }));
  const { input, changeNow, change, mayEdit, data } = sheet;
  const listed = (finishes.data?.rows ?? []).map(({ id, maker, name, figures }) => ({
    id,
    label: `${maker} ${name}`.trim(),
    detail: `${figures.thicknessMm} mm`,
  }));
  const known = data.facts.finishes
    .filter(({ id }) => !listed.some((option) => option.id === id))
    .map(({ id, name }) => ({ id, label: name, detail: 'chosen' }));
  const options = [{ id: BARE, label: 'Bare wood' }, ...known, ...listed];
  const values = [...new Set(shownFaces(input).map((face) => input.finishes[face] ?? BARE))];
  const toId = (choice: string) => (choice === BARE ? null : choice);
  return (
    <>
      <FieldGrid cellMinPx={170}>
        <Select
          label="All faces"
          options={values.length > 1 ? [{ id: MIXED, label: 'Different by face' }, ...options] : options}
          value={values.length > 1 ? MIXED : (values[0] ?? BARE)}
          onChange={(choice) => {
            if (choice === MIXED) return;
            const id = toId(choice);
            changeNow({
              finishes: { front: id, back: id, top: id, bottom: id, left: id, right: id, slopes: id },
            });
          }}
          isDisabled={!mayEdit}
          error={errorOf('finishes')}
        />
        {shownFaces(input).map((face) => (
          <Select
            key={face}
            label={FACE_WORDS[face]}
            options={options}
            value={input.finishes[face] ?? BARE}
            onChange={(choice) => changeNow({ finishes: { ...input.finishes, [face]: toId(choice) } })}
            isDisabled={!mayEdit}
          />
        ))}
      </FieldGrid>
      <Checkbox
        isSelected={input.finishWrapsOpenings}
        onChange={(finishWrapsOpenings) => change({ finishWrapsOpenings })}
        isDisabled={!mayEdit}
        detail="Cut-outs and recesses are then cut larger by its thickness"
      >
        Tucked into the openings
      </Checkbox>
    </>
  );
}
