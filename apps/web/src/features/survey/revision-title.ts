// A revision of a survey in one line: `Hatch or estate, seats up, revision 2`.

export type NamedRevision = {
  readonly formName: string;
  readonly spaceName: string;
  readonly seatState: string;
  readonly revision: number;
};

export function revisionTitle({ formName, spaceName, seatState, revision }: NamedRevision): string {
  const space = spaceName === '' ? formName : spaceName;
  return [space, seatState, `revision ${revision}`].filter((part) => part !== '').join(', ');
}
