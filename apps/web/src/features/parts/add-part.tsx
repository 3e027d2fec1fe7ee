'use client';

import type { PartsInput, PartsLine } from '@gusset/contracts/parts';
import type { PartKind } from '@gusset/contracts/records';
import { useQuery } from '@tanstack/react-query';
import { useState } from 'react';
import { Button } from '../../shared/controls/button.tsx';
import { ComboBox } from '../../shared/controls/combo-box.tsx';
import { FieldGrid } from '../../shared/controls/field-frame.tsx';
import { NumberField } from '../../shared/controls/number-field.tsx';
import { Select } from '../../shared/controls/select.tsx';
import { TextField } from '../../shared/controls/text-field.tsx';
import { useTRPC } from '../../shared/data/api-client.ts';
import styles from './parts-screen.module.css';

type HandLine = PartsInput['handLines'][number];

const GROUP_OF: Readonly<Record<PartKind, PartsLine['group']>> = {
  driver: 'driver',
  amplifier: 'amplifier',
  processor: 'signal',
  source: 'signal',
  sheet: 'sheet-goods',
  finish: 'finish',
  hardware: 'hardware',
  supply: 'hardware',
};
const MATERIALS: readonly PartKind[] = ['sheet', 'finish', 'supply'];
const UNITS: readonly { readonly id: HandLine['unit']; readonly label: string }[] = [
  { id: 'each', label: 'Pieces' },
  { id: 'sheet', label: 'Sheets' },
  { id: 'm', label: 'Metres' },
  { id: 'm2', label: 'Square metres' },
  { id: 'litre', label: 'Litres' },
  { id: 'kg', label: 'Kilograms' },
  { id: 'pack', label: 'Packs' },
];
const OTHER = 'other';

/** Something the design does not know of: from the catalogue, or in words. */
export function AddPart({ onAdd }: { readonly onAdd: (line: HandLine) => void }) {
  const trpc = useTRPC();
  const [text, setText] = useState('');
  const [chosen, setChosen] = useState<string | null>(null);
  const [description, setDescription] = useState('');
  const [quantity, setQuantity] = useState(1);
  const [unit, setUnit] = useState<HandLine['unit']>('each');
  const found = useQuery({
    ...trpc.search.everything.queryOptions({ text }),
    enabled: text.trim().length > 1,
  });
  const parts = found.data?.parts ?? [];
  const part = parts.find(({ id }) => id === chosen);

  const add = () => {
    onAdd({
      key: `hand:${crypto.randomUUID()}`,
      partId: part?.id ?? null,
      description: part?.title ?? description.trim(),
      kind: part !== undefined && MATERIALS.includes(part.kind) ? 'material' : 'part',
      group: part === undefined ? 'hardware' : GROUP_OF[part.kind],
      quantity,
      unit,
      source: 'buy',
      supplierId: null,
      returnDueOn: null,
      note: '',
    });
    setChosen(null);
    setDescription('');
    setQuantity(1);
  };

  const isNamed = part !== undefined || description.trim() !== '';
  return (
    <section className={styles.add} aria-label="Add a part" data-screen-only="">
      <h2 className="caption">Add a part</h2>
      <FieldGrid cellMinPx={200}>
        <ComboBox
          label="From the catalogue"
          options={[
            ...parts.map(({ id, title, detail }) => ({ id, label: title, detail })),
            { id: OTHER, label: 'Something else', detail: 'in words' },
          ]}
          value={chosen}
          onChange={setChosen}
          onSearch={setText}
          isSearching={found.isFetching}
          placeholder="Type two letters"
        />
        {part === undefined ? (
          <TextField label="Or in words" value={description} onChange={setDescription} />
        ) : null}
        <NumberField
          label="How many"
          value={quantity}
          min={0}
          max={100_000}
          onCommit={(figure) => setQuantity(figure?.value ?? 1)}
        />
        <Select label="In" options={UNITS} value={unit} onChange={setUnit} />
      </FieldGrid>
      <div>
        <Button isDisabled={!isNamed} onPress={add}>
          Add this part
        </Button>
      </div>
    </section>
  );
}
