'use client';

import { personInputSchema } from '@gusset/contracts/records';
import { SKILL_NAME, SKILLS } from '@gusset/contracts/shop';
import { useQueryClient } from '@tanstack/react-query';
import { Button } from '../../shared/controls/button.tsx';
import { Checkbox } from '../../shared/controls/checkbox.tsx';
import { FormText } from '../../shared/controls/form-text.tsx';
import { useTRPC, useTRPCClient } from '../../shared/data/api-client.ts';
import { ArchiveButton } from '../../shared/record/archive-button.tsx';
import { FormMoney } from '../../shared/record/form-fields.tsx';
import { RecordDialog } from '../../shared/record/record-dialog.tsx';
import { FieldSet } from '../../shared/record/record-page.tsx';
import { useRecordForm } from '../../shared/record/use-record-form.ts';
import styles from './people.module.css';
import type { StaffMember } from './staff.tsx';

const LABELS = {
  name: 'Name',
  email: 'E-mail',
  phone: 'Phone',
  skills: 'Skills',
  hourlyCostMinor: 'Costs the shop an hour',
} as const;

/** One person who works here: what they can do, what their hour costs. Null adds one. */
export function StaffDialog({
  person,
  onClose,
}: {
  readonly person: StaffMember | null;
  readonly onClose: () => void;
}) {
  const trpc = useTRPC();
  const client = useTRPCClient();
  const queries = useQueryClient();
  const finish = () => {
    void queries.invalidateQueries({ queryKey: trpc.person.pathKey() });
    onClose();
  };
  const form = useRecordForm({
    schema: personInputSchema,
    start: {
      name: person?.name ?? '',
      email: person?.email ?? '',
      phone: person?.phone ?? '',
      skills: person?.skills ?? ['any'],
      hourlyCostMinor: person?.hourlyCostMinor ?? 0,
    },
    record: person,
    noun: 'Person',
    create: (key, input) => client.person.create.mutate({ key, input }),
    change: (at, input) => client.person.change.mutate({ ...at, input }),
    onSaved: finish,
  });
  const { control, watch, setValue } = form.form;
  const skills = watch('skills');
  return (
    <RecordDialog
      title={person === null ? 'Add somebody' : person.name}
      form={form}
      labels={LABELS}
      onClose={onClose}
      acts={
        <>
          {person === null ? null : (
            <ArchiveButton
              name={person.name}
              isArchived={person.archived}
              archive={(archived) => client.person.archive.mutate({ id: person.id, archived })}
              onDone={finish}
            />
          )}
          <Button look="primary" onPress={() => void form.save()} isPending={form.isSaving}>
            {person === null ? 'Add' : 'Save'}
          </Button>
        </>
      }
    >
      <FormText control={control} name="name" label={LABELS.name} isRequired />
      <FormText control={control} name="email" label={LABELS.email} type="email" isOptional />
      <FormText control={control} name="phone" label={LABELS.phone} type="tel" isOptional />
      <FormMoney
        control={control}
        name="hourlyCostMinor"
        label={LABELS.hourlyCostMinor}
        hint="Wage and what comes on top; margins are reckoned with it"
      />
      <FieldSet title={LABELS.skills}>
        <div className={styles.checks}>
          {SKILLS.map((skill) => (
            <Checkbox
              key={skill}
              isSelected={skills.includes(skill)}
              onChange={(isOn) =>
                setValue('skills', isOn ? [...skills, skill] : skills.filter((one) => one !== skill), {
                  shouldDirty: true,
                })
              }
            >
              {SKILL_NAME[skill]}
            </Checkbox>
          ))}
        </div>
      </FieldSet>
    </RecordDialog>
  );
}
