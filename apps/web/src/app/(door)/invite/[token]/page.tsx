import type { Metadata } from 'next';
import { DoorSheet } from '../../../../features/door/door-sheet.tsx';
import { InvitationDoor } from './invitation-door.tsx';

export const metadata: Metadata = { title: 'Invitation', referrer: 'no-referrer' };

export default async function InvitePage({ params }: { params: Promise<{ token: string }> }) {
  return (
    <DoorSheet name="Invitation">
      <InvitationDoor token={(await params).token} />
    </DoorSheet>
  );
}
