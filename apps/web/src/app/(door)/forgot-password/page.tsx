import type { Metadata } from 'next';
import { DoorSheet } from '../../../features/door/door-sheet.tsx';
import { ForgotPasswordForm } from '../../../features/door/forgot-password-form.tsx';

export const metadata: Metadata = { title: 'Get a new password' };

export default function ForgotPasswordPage() {
  return (
    <DoorSheet name="New password">
      <ForgotPasswordForm />
    </DoorSheet>
  );
}
