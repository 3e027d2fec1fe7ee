import type { Metadata } from 'next';
import { DoorSheet } from '../../../features/door/door-sheet.tsx';
import { SetUp } from '../../../features/door/set-up.tsx';

export const metadata: Metadata = { title: 'Set up a shop' };

export default function SetUpPage() {
  return (
    <DoorSheet name="Set up a shop">
      <SetUp />
    </DoorSheet>
  );
}
