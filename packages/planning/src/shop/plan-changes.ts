// What-if: the same shop with one thing changed.
import type { Leave, ShopPlanInput } from '@gusset/contracts/planning';
import { type Refusal, refuse } from '@gusset/units';

/** One part line expected on another date, or on nobody knows which. */
export function withPartDate(
  input: ShopPlanInput,
  jobId: string,
  lineKey: string,
  expectedOn: string | null,
): ShopPlanInput | Refusal {
  const part = input.jobs.find(({ id }) => id === jobId)?.partDates.find((one) => one.lineKey === lineKey);
  if (part === undefined) {
    return refuse('lineKey', {
      allowed: 'a part line of the job',
      got: lineKey,
      why: 'the job has no such part',
    });
  }
  return {
    ...input,
    jobs: input.jobs.map((job) =>
      job.id !== jobId
        ? job
        : {
            ...job,
            partDates: job.partDates.map((one) =>
              one === part ? { ...one, expectedOn, receivedOn: null } : one,
            ),
          },
    ),
  };
}

/** One person away for longer. */
export function withLeave(input: ShopPlanInput, personId: string, leave: Leave): ShopPlanInput | Refusal {
  if (!input.people.some(({ id }) => id === personId)) {
    return refuse('personId', {
      allowed: 'somebody of the shop',
      got: personId,
      why: 'nobody here has this id',
    });
  }
  return {
    ...input,
    people: input.people.map((person) =>
      person.id === personId ? { ...person, leave: [...person.leave, leave] } : person,
    ),
  };
}
