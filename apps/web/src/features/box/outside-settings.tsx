'use client';

import type { BoxInput } from '@gusset/contracts/box';
import { boxFromSection, boxWithNet } from '@gusset/sheets';
import { formatVolume, isRefusal } from '@gusset/units';
import { useQuery } from '@tanstack/react-query';
import { useState } from 'react';
import { Button } from '../../shared/controls/button.tsx';
import { ComboBox } from '../../shared/controls/combo-box.tsx';
import { FieldGrid } from '../../shared/controls/field-frame.tsx';
import { LengthField } from '../../shared/controls/length-field.tsx';
import { RadioGroup } from '../../shared/controls/radio-group.tsx';
import { Select } from '../../shared/controls/select.tsx';
import { useTRPC } from '../../shared/data/api-client.ts';
import { keptLength } from '../../shared/job/length-rule.ts';
import { Verdict } from '../../shared/marks/verdict.tsx';
import type { SettingsProps } from './box-details.tsx';
import styles from './box-screen.module.css';
import { OUTSIDE_WORDS, type OutsideKey } from './box-types.ts';

/** Shape, sizes and boards; and the buttons that work a size out. */
export function OutsideSettings({ sheet, errorOf }: SettingsProps) {
  const { input, change, mayEdit } = sheet;
  const keys = KEYS[input.shape];
  return (
    <fieldset className={styles.group} data-screen-only="">
      <legend className="caption">Outside of the wood</legend>
      <FieldGrid cellMinPx={150}>
        {keys.map((key) => (
          <LengthField
            key={key}
            label={labelOf(key, input.shape)}
            value={input.outside[key]}
            onCommit={(length) => change({ outside: { ...input.outside, [key]: keptLength(length) } })}
            maxMm={20_000}
            isReadOnly={!mayEdit}
            error={errorOf(`outside.${key}`)}
          />
        ))}
      </FieldGrid>
      <FieldGrid cellMinPx={480}>
        <RadioGroup
          label="Shape"
          isRow
          value={input.shape}
          onChange={(shape) => change({ shape })}
          isDisabled={!mayEdit}
          options={[
            { id: 'rectangular', label: 'Rectangular' },
            { id: 'wedge', label: 'Wedge' },
            { id: 'clipped-wedge', label: 'Clipped wedge' },
            { id: 'l', label: 'L' },
          ]}
        />
        {input.shape === 'rectangular' ? null : (
          <RadioGroup
            label={input.shape === 'l' ? 'Step toward the' : 'Which face leans'}
            isRow
            value={input.slopedFace}
            onChange={(slopedFace) => change({ slopedFace })}
            isDisabled={!mayEdit}
            options={[
              { id: 'back', label: 'Back' },
              { id: 'front', label: 'Front' },
            ]}
          />
        )}
      </FieldGrid>
      {mayEdit ? <SizingButtons sheet={sheet} /> : null}
      <Boards sheet={sheet} errorOf={errorOf} />
    </fieldset>
  );
}

const KEYS: Readonly<Record<BoxInput['shape'], readonly OutsideKey[]>> = {
  rectangular: ['width', 'height', 'depth'],
  wedge: ['width', 'height', 'depth', 'depthTop'],
  'clipped-wedge': ['width', 'height', 'depth', 'depthTop', 'kneeHeight'],
  l: ['width', 'height', 'depth', 'depthTop', 'kneeHeight'],
};

function labelOf(key: OutsideKey, shape: BoxInput['shape']): string {
  if (key === 'depth' && shape !== 'rectangular') return 'Depth at the bottom';
  if (shape !== 'l') return OUTSIDE_WORDS[key];
  return key === 'kneeHeight'
    ? 'Height of the foot'
    : key === 'depthTop'
      ? 'Depth above the foot'
      : OUTSIDE_WORDS[key];
}

const VARIED = ['depth', 'height', 'width'] as const;

/** Work a size out: so that the air meets sheet 03, or as large as the measured space takes. */
function SizingButtons({ sheet }: Pick<SettingsProps, 'sheet'>) {
  const [why, setWhy] = useState<string | null>(null);
  const { input, data, change } = sheet;
  const { facts, upstream } = data;
  const target = upstream.sound?.netLitres ?? null;
  const take = (found: BoxInput | null | ReturnType<typeof boxWithNet>) => {
    if (found === null) return setWhy('No such box stands there with the clearances that the shop wants.');
    if (isRefusal(found)) return setWhy(`${found.refusal.why}. Accepted: ${found.refusal.allowed}.`);
    setWhy(null);
    change(found);
  };
  const fromSection = () => {
    const found = boxFromSection(input, facts, upstream);
    take(found === null || isRefusal(found) ? found : found.input);
  };
  return (
    <>
      <div className={styles.acts}>
        {target === null ? null : (
          <>
            <span>Meet {formatVolume(target, 'metric')} by</span>
            {VARIED.map((vary) => (
              <Button key={vary} onPress={() => take(boxWithNet(input, facts, upstream, vary))}>
                {vary}
              </Button>
            ))}
          </>
        )}
        {upstream.survey == null || !(input.shape === 'rectangular' || input.shape === 'wedge') ? null : (
          <Button onPress={fromSection}>Largest that stands in the measured space</Button>
        )}
      </div>
      {why === null ? null : (
        <div role="status">
          <Verdict tone="check" words="That size was not found">
            <p>{why}</p>
          </Verdict>
        </div>
      )}
    </>
  );
}

const MOST_BOARDS = 100;

function Boards({ sheet, errorOf }: Pick<SettingsProps, 'sheet' | 'errorOf'>) {
  const trpc = useTRPC();
  const boards = useQuery(trpc.part.sheet.list.queryOptions({ limit: MOST_BOARDS }));
  const { input, change, changeNow, mayEdit, data } = sheet;
  const listed = (boards.data?.rows ?? []).map(({ id, maker, name, figures, stockQuantity }) => ({
    id,
    label: `${maker} ${name}`.trim(),
    detail: [
      figures.measuredThicknessMm === null
        ? `${figures.nominalThicknessMm} mm nominal`
        : `${figures.measuredThicknessMm} mm measured`,
      stockQuantity > 0 ? `${stockQuantity} in stock` : 'to be bought',
    ].join(' · '),
  }));
  const known = [data.facts.carcass, data.facts.baffle].flatMap((sheetFact) =>
    sheetFact === null || listed.some(({ id }) => id === sheetFact.id)
      ? []
      : [{ id: sheetFact.id, label: sheetFact.name, detail: 'chosen' }],
  );
  const options = [...known, ...listed];
  const noMatch = boards.isError ? 'The list could not be fetched' : 'No board by that name; add it in Parts';
  const { doubler } = input.baffle;
  return (
    <FieldGrid cellMinPx={200}>
      <ComboBox
        key={`carcass ${options.length}`}
        label="Board of the box"
        options={options}
        value={input.carcassId}
        onChange={(carcassId) => changeNow({ carcassId })}
        isSearching={boards.isPending}
        noMatch={noMatch}
        isDisabled={!mayEdit}
        error={errorOf('carcassId')}
      />
      <ComboBox
        key={`baffle ${options.length}`}
        label="Board of the baffle"
        isOptional
        hint="Empty = as the box"
        options={options}
        value={input.baffleId}
        onChange={(baffleId) => changeNow({ baffleId })}
        isSearching={boards.isPending}
        noMatch={noMatch}
        isDisabled={!mayEdit}
        error={errorOf('baffleId')}
      />
      <Select
        label="Baffle doubled"
        value={doubler === null ? 'none' : `${doubler.at} ${doubler.layers}`}
        onChange={(choice) => {
          const found = DOUBLERS.find(({ id }) => id === choice);
          change({ baffle: { ...input.baffle, doubler: found?.doubler ?? null } });
        }}
        options={DOUBLERS.map(({ id, label }) => ({ id, label }))}
        isDisabled={!mayEdit}
        error={errorOf('baffle.doubler')}
      />
    </FieldGrid>
  );
}

const DOUBLERS = [
  { id: 'none', label: 'Not doubled', doubler: null },
  { id: 'inside 1', label: 'One layer inside', doubler: { at: 'inside', layers: 1 } },
  { id: 'inside 2', label: 'Two layers inside', doubler: { at: 'inside', layers: 2 } },
  { id: 'inside 3', label: 'Three layers inside', doubler: { at: 'inside', layers: 3 } },
  { id: 'outside 1', label: 'One layer outside', doubler: { at: 'outside', layers: 1 } },
  { id: 'outside 2', label: 'Two layers outside', doubler: { at: 'outside', layers: 2 } },
  { id: 'outside 3', label: 'Three layers outside', doubler: { at: 'outside', layers: 3 } },
] as const;
