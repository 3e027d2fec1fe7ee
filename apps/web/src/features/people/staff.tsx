'use client';

import { SKILL_NAME } from '@gusset/contracts/shop';
import { formatMoney } from '@gusset/units';
import { useQuery } from '@tanstack/react-query';
import { useState } from 'react';
import { Button } from '../../shared/controls/button.tsx';
import { useTRPC } from '../../shared/data/api-client.ts';
import type { ApiOutputs } from '../../shared/data/api-types.ts';
import { shownError } from '../../shared/data/shop-error.ts';
import { Skeleton } from '../../shared/marks/skeleton.tsx';
import { Verdict } from '../../shared/marks/verdict.tsx';
import { useDisplay } from '../../shared/shell/display-provider.tsx';
import { useMay } from '../../shared/shell/person.tsx';
import styles from './people.module.css';
import { StaffDialog } from './staff-dialog.tsx';

export type StaffMember = ApiOutputs['person']['list']['rows'][number];

/** Everybody whose hours are planned, with or without a sign-in. */
export function Staff() {
  const trpc = useTRPC();
  const { shop } = useDisplay();
  const manages = useMay('people.manage');
  const query = useQuery(trpc.person.list.queryOptions({ limit: 200 }));
  const [open, setOpen] = useState<StaffMember | 'new' | null>(null);
  if (query.isPending) return <Skeleton lines={3} what="Fetching the people" />;
  if (query.isError) return <Verdict tone="fail" words={shownError(query.error).message} />;
  return (
    <>
      <ul className={styles.list}>
        {query.data.rows.map((person) => (
          <li key={person.id} className={styles.person}>
            <div>
              <strong>{person.name}</strong>
              <p className={styles.detail}>{skillWords(person)}</p>
            </div>
            <span className="figures">
              {person.hourlyCostMinor === null
                ? ''
                : `${formatMoney({ minor: person.hourlyCostMinor, currency: shop.currency }, shop.locale)} / h`}
            </span>
            {manages ? (
              <Button look="quiet" aria-label={`Change ${person.name}`} onPress={() => setOpen(person)}>
                Change
              </Button>
            ) : null}
          </li>
        ))}
      </ul>
      {manages ? (
        <div>
          <Button onPress={() => setOpen('new')}>Add somebody who works here</Button>
        </div>
      ) : null}
      {open === null ? null : (
        <StaffDialog person={open === 'new' ? null : open} onClose={() => setOpen(null)} />
      )}
    </>
  );
}

function skillWords({ skills }: StaffMember): string {
  const special = skills.filter((skill) => skill !== 'any');
  return special.length === 0
    ? 'Work that anyone can do'
    : special.map((skill) => SKILL_NAME[skill]).join(', ');
}
