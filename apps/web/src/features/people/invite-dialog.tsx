'use client';

import type { Role } from '@gusset/contracts/access';
import { useMutation, useQuery, useQueryClient } from '@tanstack/react-query';
import { useState } from 'react';
import { Button } from '../../shared/controls/button.tsx';
import { Select } from '../../shared/controls/select.tsx';
import { TextField } from '../../shared/controls/text-field.tsx';
import { useTRPC } from '../../shared/data/api-client.ts';
import { fieldError, shownError } from '../../shared/data/shop-error.ts';
import { Verdict } from '../../shared/marks/verdict.tsx';
import { Dialog } from '../../shared/overlays/dialog.tsx';
import { useMessages } from '../../shared/overlays/messages.tsx';
import styles from './people.module.css';
import { ROLE_OPTIONS } from './role-options.ts';

const SOMEBODY_NEW = 'new';

/** Asks a colleague in, by mail. */
export function InviteDialog({ onClose }: { readonly onClose: () => void }) {
  const trpc = useTRPC();
  const queries = useQueryClient();
  const say = useMessages();
  const [key] = useState(() => crypto.randomUUID());
  const [personId, setPersonId] = useState(SOMEBODY_NEW);
  const [name, setName] = useState('');
  const [email, setEmail] = useState('');
  const [role, setRole] = useState<Role>('technician');
  const people = useQuery(trpc.person.list.queryOptions({ limit: 200 }));
  const without = (people.data?.rows ?? []).filter((person) => person.role === null);
  const invite = useMutation(
    trpc.people.invite.mutationOptions({
      onSuccess: async () => {
        await queries.invalidateQueries({ queryKey: trpc.people.pathKey() });
        say(`${name} is asked. The mail is on its way to ${email}.`);
        onClose();
      },
    }),
  );
  const error = invite.isError ? shownError(invite.error) : null;
  const choose = (id: string) => {
    setPersonId(id);
    const person = without.find((row) => row.id === id);
    if (person === undefined) return;
    setName(person.name);
    setEmail(person.email);
  };
  return (
    <Dialog
      title="Invite a colleague"
      isOpen
      onClose={onClose}
      isDismissable={false}
      acts={
        <Button
          look="primary"
          isPending={invite.isPending}
          onPress={() =>
            invite.mutate({ key, name, email, role, personId: personId === SOMEBODY_NEW ? null : personId })
          }
        >
          Send the invitation
        </Button>
      }
    >
      <div className={styles.fields}>
        <p>They get a link by mail. It works once, and for seven days.</p>
        {error !== null && error.fields.length === 0 ? <Verdict tone="fail" words={error.message} /> : null}
        {without.length > 0 ? (
          <Select
            label="Who"
            options={[
              { id: SOMEBODY_NEW, label: 'Somebody new' },
              ...without.map((person) => ({ id: person.id, label: person.name, detail: 'works here' })),
            ]}
            value={personId}
            onChange={choose}
            error={fieldError(error, 'personId')}
          />
        ) : null}
        <TextField
          label="Name"
          value={name}
          onChange={setName}
          isRequired
          error={fieldError(error, 'name')}
        />
        <TextField
          label="E-mail"
          type="email"
          value={email}
          onChange={setEmail}
          isRequired
          error={fieldError(error, 'email')}
        />
        <Select label="Role" options={ROLE_OPTIONS} value={role} onChange={setRole} />
      </div>
    </Dialog>
  );
}
