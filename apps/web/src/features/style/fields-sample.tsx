'use client';

import type { Money } from '@gusset/units';
import { useState } from 'react';
import { Button } from '../../shared/controls/button.tsx';
import { Checkbox } from '../../shared/controls/checkbox.tsx';
import { ComboBox } from '../../shared/controls/combo-box.tsx';
import { DateField } from '../../shared/controls/date-field.tsx';
import { FieldGrid } from '../../shared/controls/field-frame.tsx';
import type { LengthValue } from '../../shared/controls/length-entry.ts';
import { LengthField } from '../../shared/controls/length-field.tsx';
import { LinkButton } from '../../shared/controls/link-button.tsx';
import { MoneyField } from '../../shared/controls/money-field.tsx';
import { NumberField } from '../../shared/controls/number-field.tsx';
import type { Option } from '../../shared/controls/option.ts';
import { RadioGroup } from '../../shared/controls/radio-group.tsx';
import { Select } from '../../shared/controls/select.tsx';
import { Switch } from '../../shared/controls/switch.tsx';
import { TextArea } from '../../shared/controls/text-area.tsx';
import { TextField } from '../../shared/controls/text-field.tsx';
import { PageHeader } from '../../shared/shell/page-header.tsx';
import { StyleGroup } from './style-group.tsx';

type Board = 'birch-18' | 'mdf-18' | 'mdf-25';

const BOARDS: readonly Option<Board>[] = [
  { id: 'birch-18', label: 'Birch plywood 18', detail: '3 in the rack' },
  { id: 'mdf-18', label: 'MDF 18', detail: '11 in the rack' },
  { id: 'mdf-25', label: 'MDF 25', detail: 'none', isDisabled: true },
];

const DRIVERS: readonly Option[] = [
  'Quince 10',
  'Quince 12',
  'Medlar 8',
  'Medlar 12 twin coil',
  'Medlar 15',
].map((label) => ({ id: label.toLowerCase().replaceAll(' ', '-'), label, detail: '4 Ω' }));

export function FieldsSample() {
  return (
    <>
      <PageHeader kicker="Style page" title="Fields are cells of a title block" />
      <LengthSamples />
      <TextSamples />
      <ChoiceSamples />
      <ButtonSamples />
    </>
  );
}

function LengthSamples() {
  const [floor, setFloor] = useState<LengthValue | null>({ mm: 812, typed: '812', unit: 'mm' });
  const [seat, setSeat] = useState<LengthValue | null>({ mm: 498.475, typed: '19 5/8 in', unit: 'in' });
  const [opening, setOpening] = useState<LengthValue | null>(null);
  const [offset, setOffset] = useState<LengthValue | null>({ mm: -6, typed: '-6', unit: 'mm' });
  const [resistance, setResistance] = useState<number | null>(3.6);
  const [deposit, setDeposit] = useState<Money | null>({ minor: 25_000, currency: 'GBP' });
  return (
    <StyleGroup title="Lengths, figures, money">
      <FieldGrid>
        <LengthField label="Floor, seat back to sill" value={floor} onCommit={setFloor} maxMm={3000} />
        <LengthField label="Height at seat back" value={seat} onCommit={setSeat} maxMm={2000} />
        <LengthField
          label="Opening, square to the way in"
          hint="Hold the tape at right angles to the travel"
          value={opening}
          onCommit={setOpening}
          minMm={100}
          maxMm={2000}
        />
        <LengthField
          label="Offset from centre"
          value={offset}
          onCommit={setOffset}
          minMm={-500}
          maxMm={500}
        />
        <LengthField
          label="Port, length"
          value={{ mm: 4000, typed: '4000', unit: 'mm' }}
          onCommit={setFloor}
          error="4000 mm is longer than the box. It takes 40 mm to 620 mm."
        />
        <LengthField label="Cavity, from sheet 02" value={floor} onCommit={setFloor} isReadOnly />
        <NumberField
          label="Coil resistance"
          unit="ohm"
          value={resistance}
          onCommit={(figure) => setResistance(figure?.value ?? null)}
          min={0.5}
          max={32}
          step={0.1}
        />
        <MoneyField label="Deposit" value={deposit} onCommit={setDeposit} />
      </FieldGrid>
    </StyleGroup>
  );
}

function TextSamples() {
  const [name, setName] = useState('R. Okafor');
  const [note, setNote] = useState('');
  const [day, setDay] = useState<string | null>('2026-12-03');
  return (
    <StyleGroup title="Words and days">
      <FieldGrid>
        <TextField label="Customer" value={name} onChange={setName} />
        <TextField
          label="E-mail"
          type="email"
          defaultValue="okafor@"
          error="An address has something behind the @, such as name@example.com."
        />
        <TextField label="Number plate" isOptional placeholder="as it stands on the car" />
        <TextField label="Job number" value="2417" isReadOnly />
        <DateField label="Promised for" value={day} onChange={setDay} minDay="2026-11-24" />
        <DateField label="Parts due" value={null} onChange={setDay} isOptional />
      </FieldGrid>
      <TextArea
        label="What the customer asked for"
        value={note}
        onChange={setNote}
        placeholder="Keeps the spare, folds the seats twice a month"
        rows={3}
      />
    </StyleGroup>
  );
}

function ChoiceSamples() {
  const [board, setBoard] = useState<Board | null>('birch-18');
  const [driver, setDriver] = useState<string | null>(null);
  const [joint, setJoint] = useState<'butt' | 'mitre' | 'rebate' | null>('mitre');
  return (
    <StyleGroup title="Choices">
      <FieldGrid>
        <Select label="Board" options={BOARDS} value={board} onChange={setBoard} />
        <Select
          label="Bay"
          options={[]}
          value={null}
          onChange={setDriver}
          error="Choose the bay the car stands in."
        />
        <ComboBox
          label="Driver"
          options={DRIVERS}
          value={driver}
          onChange={setDriver}
          placeholder="Maker or size"
        />
      </FieldGrid>
      <FieldGrid cellMinPx={260}>
        <RadioGroup
          label="Joint"
          value={joint}
          onChange={setJoint}
          options={[
            { id: 'butt', label: 'Butt, glued and screwed' },
            { id: 'mitre', label: 'Mitre', detail: 'one saw set-up for all four sides' },
            { id: 'rebate', label: 'Rebate' },
          ]}
        />
        <div>
          <Checkbox defaultSelected>Seats stay foldable</Checkbox>
          <Checkbox>Spare wheel stays reachable</Checkbox>
          <Checkbox isIndeterminate detail="2 of 5 panels">
            Edges rounded
          </Checkbox>
          <Checkbox isDisabled>Already cut</Checkbox>
        </div>
        <div>
          <Switch defaultSelected>Show ghosts</Switch>
          <Switch detail="next to millimetres">Inches in brackets</Switch>
          <Switch isDisabled>Live from the saw</Switch>
        </div>
      </FieldGrid>
    </StyleGroup>
  );
}

function ButtonSamples() {
  const [isSending, setIsSending] = useState(false);
  return (
    <StyleGroup title="Acts" isRow>
      <Button look="primary" isPending={isSending} onPress={() => setIsSending(!isSending)}>
        Send quote
      </Button>
      <Button>Print cut sheet</Button>
      <LinkButton href="/style">Open sheet 04</LinkButton>
      <Button look="danger">Remove brace</Button>
      <Button look="quiet">Use the best profile</Button>
      <Button isDisabled>Issue this sheet</Button>
    </StyleGroup>
  );
}
