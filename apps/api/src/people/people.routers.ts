// People who can sign in, invitations, one's own sign-ins, leave.
import { ROLES } from '@gusset/contracts/access';
import { idempotencyKeySchema, idSchema, nameSchema, shopDateSchema } from '@gusset/contracts/common';
import { leaveInputSchema } from '@gusset/contracts/records';
import { z } from 'zod';
import { SHOP_COOKIE } from '../trpc/context.ts';
import { allowed, anyone, router, signedIn } from '../trpc/procedures.ts';
import {
  acceptInvitation,
  invitations,
  invite,
  revokeInvitation,
  showInvitation,
} from './invitation.service.ts';
import { addLeave, leaves, removeLeave } from './leave.service.ts';
import { changeRole, members, removeMember } from './member.service.ts';
import { endOtherSessions, endSession, ownSessions } from './sessions.service.ts';

const tokenSchema = z.string().min(20).max(100);
const roleSchema = z.enum(ROLES);

export const peopleRouter = router({
  members: allowed('people.read').query(({ ctx }) => members(ctx.deps, ctx.who)),

  changeRole: allowed('people.manage')
    .input(z.strictObject({ membershipId: idSchema, role: roleSchema }))
    .mutation(({ ctx, input }) => changeRole(ctx.deps, ctx.who, input)),

  remove: allowed('people.manage')
    .input(z.strictObject({ membershipId: idSchema }))
    .mutation(({ ctx, input }) => removeMember(ctx.deps, ctx.who, input.membershipId)),

  invite: allowed('people.manage')
    .input(
      z.strictObject({
        key: idempotencyKeySchema,
        name: nameSchema,
        email: z.email('Type an address such as name@example.com.').max(254),
        role: roleSchema,
        personId: idSchema.nullable().default(null),
      }),
    )
    .mutation(({ ctx, input: { key, ...input } }) => invite(ctx.deps, ctx.who, key, input)),

  invitations: allowed('people.manage').query(({ ctx }) => invitations(ctx.deps, ctx.who)),

  revokeInvitation: allowed('people.manage')
    .input(z.strictObject({ id: idSchema }))
    .mutation(({ ctx, input }) => revokeInvitation(ctx.deps, ctx.who, input.id)),

  invitation: anyone
    .input(z.strictObject({ token: tokenSchema }))
    .query(({ ctx, input }) => showInvitation(ctx.deps, input.token)),

  acceptInvitation: signedIn
    .input(z.strictObject({ token: tokenSchema }))
    .mutation(async ({ ctx, input }) => {
      const joined = await acceptInvitation(ctx.deps, ctx.signedIn, input.token, ctx.requestId);
      ctx.setCookie(SHOP_COOKIE, joined.shopId);
      return joined;
    }),
});

export const accountRouter = router({
  sessions: signedIn.query(({ ctx }) => ownSessions(ctx.deps, ctx.signedIn)),

  endSession: signedIn
    .input(z.strictObject({ id: z.string().min(1).max(100) }))
    .mutation(({ ctx, input }) => endSession(ctx.deps, ctx.signedIn, input.id)),

  endOtherSessions: signedIn.mutation(({ ctx }) => endOtherSessions(ctx.deps, ctx.signedIn)),
});

export const leaveRouter = router({
  list: allowed('people.read')
    .input(
      z.strictObject({
        personId: idSchema.nullable().default(null),
        endsFrom: shopDateSchema.nullable().default(null),
      }),
    )
    .query(({ ctx, input }) => leaves(ctx.deps, ctx.who, input)),

  add: allowed('leave.edit')
    .input(z.strictObject({ key: idempotencyKeySchema, leave: leaveInputSchema }))
    .mutation(({ ctx, input }) => addLeave(ctx.deps, ctx.who, input.key, input.leave)),

  remove: allowed('leave.edit')
    .input(z.strictObject({ id: idSchema }))
    .mutation(({ ctx, input }) => removeLeave(ctx.deps, ctx.who, input.id)),
});
