import { nameSchema } from '@gusset/contracts/common';
import { z } from 'zod';

const SHORTEST_PASSWORD = 12;
const LONGEST_PASSWORD = 128;

const emailSchema = z.email('Type an address such as name@example.com.').max(254);
export const newPasswordSchema = z
  .string()
  .min(SHORTEST_PASSWORD, 'Use 12 characters or more; four unrelated words do well.')
  .max(LONGEST_PASSWORD, 'Use 128 characters at the most.');

export const signInSchema = z.object({
  email: emailSchema,
  password: z.string().min(1, 'Type your password.'),
});
export type SignInValues = z.infer<typeof signInSchema>;

export const accountSchema = z.object({
  name: nameSchema,
  email: emailSchema,
  password: newPasswordSchema,
});
export type AccountValues = z.infer<typeof accountSchema>;

export const forgotSchema = z.object({ email: emailSchema });
export type ForgotValues = z.infer<typeof forgotSchema>;

export const resetSchema = z.object({ password: newPasswordSchema });
export type ResetValues = z.infer<typeof resetSchema>;
