'use client';

import type { SectionFormKind } from '@gusset/contracts/cargo';
import { useRouter } from 'next/navigation';
import { useState } from 'react';
import { Button } from '../../shared/controls/button.tsx';
import { RadioGroup } from '../../shared/controls/radio-group.tsx';
import { TextField } from '../../shared/controls/text-field.tsx';
import { useTRPCClient } from '../../shared/data/api-client.ts';
import { fieldError, type ShownError, shownError } from '../../shared/data/shop-error.ts';
import { Verdict } from '../../shared/marks/verdict.tsx';
import { paths } from '../../shared/paths.ts';
import { startingCorners, startingStations } from './free-sections.ts';
import styles from './model-surveys-screen.module.css';

type Choice = Exclude<SectionFormKind, 'free-section'> | 'corners' | 'stations';

const CHOICES: readonly { readonly id: Choice; readonly label: string; readonly detail: string }[] = [
  { id: 'saloon-boot', label: 'Saloon boot', detail: 'Floor, sill, lid, parcel shelf, seat back' },
  { id: 'hatch-estate', label: 'Hatch or estate', detail: 'Floor, sill, tailgate, roof, seat back' },
  { id: 'behind-seat', label: 'Behind the seat', detail: 'Between seat and cab wall' },
  { id: 'under-seat', label: 'Under the seat', detail: 'Pickup or rear bench, with a hump if there is one' },
  { id: 'spare-wheel-well', label: 'Spare-wheel well', detail: 'Round or square, under the floor panel' },
  { id: 'footwell', label: 'Passenger footwell', detail: 'Toe board, floor and dash; never at the pedals' },
  { id: 'corners', label: 'Any shape, by corners', detail: 'Along and up for each corner' },
  {
    id: 'stations',
    label: 'Any shape, by straightedge',
    detail: 'Offsets at stations along a line, level or tilted: slopes and glass',
  },
];

export type NewSurveyFormProps = {
  readonly modelId: string;
  /** What a model of this body most often has. */
  readonly suggested: Choice;
};

/** Begins a survey: which form, how the seats stand. */
export function NewSurveyForm({ modelId, suggested }: NewSurveyFormProps) {
  const router = useRouter();
  const client = useTRPCClient();
  // Made once: a second tap on a slow line begins no second survey.
  const [key, setKey] = useState(() => crypto.randomUUID());
  const [choice, setChoice] = useState<Choice>(suggested);
  const [spaceName, setSpaceName] = useState('');
  const [seatState, setSeatState] = useState('seats up');
  const [error, setError] = useState<ShownError | null>(null);
  const [isBusy, setIsBusy] = useState(false);
  const begin = async () => {
    setIsBusy(true);
    setError(null);
    const free = choice === 'corners' ? startingCorners() : choice === 'stations' ? startingStations() : null;
    const formKind = choice === 'corners' || choice === 'stations' ? 'free-section' : choice;
    try {
      const survey = await client.survey.create.mutate({
        key,
        survey: { modelId, formKind, spaceName: spaceName.trim(), seatState: seatState.trim(), free },
      });
      router.push(paths.survey(survey.id));
    } catch (thrown) {
      setError(shownError(thrown));
      setKey(crypto.randomUUID());
      setIsBusy(false);
    }
  };
  const problem = (field: string) => fieldError(error, field) ?? fieldError(error, `survey.${field}`);
  return (
    <form
      className={styles.form}
      onSubmit={(event) => {
        event.preventDefault();
        void begin();
      }}
    >
      {error !== null && error.fields.length === 0 ? <Verdict tone="fail" words={error.message} /> : null}
      <RadioGroup label="What is measured" options={CHOICES} value={choice} onChange={setChoice} />
      <TextField
        label="How the seats stand"
        value={seatState}
        onChange={setSeatState}
        hint="Seats up, load cover out"
        error={problem('seatState')}
      />
      <TextField
        label="Name of the space"
        isOptional
        hint="Where a model has two of one kind: left well, floor out"
        value={spaceName}
        onChange={setSpaceName}
        error={problem('spaceName')}
      />
      <Button type="submit" look="primary" isPending={isBusy}>
        Begin measuring
      </Button>
    </form>
  );
}
