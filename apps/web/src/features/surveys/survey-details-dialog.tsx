'use client';

import type { SurveyDetails } from '@gusset/contracts/survey';
import { useState } from 'react';
import { Button } from '../../shared/controls/button.tsx';
import { DateField } from '../../shared/controls/date-field.tsx';
import { TextArea } from '../../shared/controls/text-area.tsx';
import { TextField } from '../../shared/controls/text-field.tsx';
import { useTRPCClient } from '../../shared/data/api-client.ts';
import { fieldError, type ShownError, shownError } from '../../shared/data/shop-error.ts';
import { Verdict } from '../../shared/marks/verdict.tsx';
import { Dialog } from '../../shared/overlays/dialog.tsx';
import type { SurveyAnswer } from './photo-upload.ts';

export type SurveyDetailsDialogProps = {
  readonly survey: SurveyAnswer;
  readonly isOpen: boolean;
  readonly onClose: () => void;
  readonly onSaved: (survey: SurveyAnswer) => void;
};

export function SurveyDetailsDialog({ survey, isOpen, onClose, onSaved }: SurveyDetailsDialogProps) {
  return isOpen ? <OpenDetails survey={survey} onClose={onClose} onSaved={onSaved} /> : null;
}

function OpenDetails({ survey, onClose, onSaved }: Omit<SurveyDetailsDialogProps, 'isOpen'>) {
  const client = useTRPCClient();
  const [before] = useState<SurveyDetails>(() => {
    const { spaceName, seatState, takenOn, notes } = survey;
    return { spaceName, seatState, takenOn, notes };
  });
  const [details, setDetails] = useState(before);
  const [error, setError] = useState<ShownError | null>(null);
  const [isBusy, setIsBusy] = useState(false);
  const set = (changes: Partial<SurveyDetails>) => setDetails((now) => ({ ...now, ...changes }));
  const save = async () => {
    setIsBusy(true);
    try {
      onSaved(await client.survey.describe.mutate({ surveyId: survey.id, before, details }));
    } catch (thrown) {
      setError(shownError(thrown));
    } finally {
      setIsBusy(false);
    }
  };
  return (
    <Dialog
      title="About this survey"
      isOpen
      onClose={onClose}
      acts={
        <Button look="primary" isPending={isBusy} onPress={() => void save()}>
          Save
        </Button>
      }
    >
      {error !== null && error.fields.length === 0 ? <Verdict tone="fail" words={error.message} /> : null}
      <TextField
        label="Name of the space"
        isOptional
        hint="Where a model has two of one kind: left well, floor out"
        value={details.spaceName}
        onChange={(spaceName) => set({ spaceName })}
        error={fieldError(error, 'spaceName') ?? fieldError(error, 'details.spaceName')}
      />
      <TextField
        label="Seats and floor while measuring"
        isOptional
        hint="Seats up, load cover out"
        value={details.seatState}
        onChange={(seatState) => set({ seatState })}
        error={fieldError(error, 'details.seatState')}
      />
      <DateField
        label="Measured on"
        isOptional
        value={details.takenOn}
        onChange={(takenOn) => set({ takenOn })}
        error={fieldError(error, 'details.takenOn')}
      />
      <TextArea
        label="Notes"
        isOptional
        rows={3}
        value={details.notes}
        onChange={(notes) => set({ notes })}
        error={fieldError(error, 'details.notes')}
      />
    </Dialog>
  );
}
