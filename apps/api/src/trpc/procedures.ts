// The only builders of procedures. Each states who may call it in its meta; the access test reads that.
import { may, type Permission } from '@gusset/contracts/access';
import type { ShopErrorData } from '@gusset/contracts/errors';
import { initTRPC, TRPCError } from '@trpc/server';
import { toShopError } from '../data/database-errors.ts';
import { errorData, ShopError, toTrpcError } from '../errors.ts';
import type { Context } from './context.ts';

/** `anyone` = no sign-in (a secret link or sign-up); `signed-in` = a person, whatever the shop; else a permission. */
export type Access = { readonly access: 'anyone' | 'signed-in' | Permission };

const t = initTRPC
  .context<Context>()
  .meta<Access>()
  .create({
    isDev: false, // error bodies never carry a stack
    errorFormatter({ shape, error, ctx }) {
      const shop: ShopErrorData = errorData(error, ctx?.requestId ?? '');
      return {
        message: shop.message,
        code: shape.code,
        data: { code: shape.data.code, httpStatus: shape.data.httpStatus, shop },
      };
    },
  });

export const router = t.router;

/** Turns ShopErrors into tRPC's own, and logs what is a fault. */
const translateErrors = t.middleware(async ({ ctx, next, path }) => {
  const answer = await next();
  if (answer.ok) return answer;
  const { cause } = answer.error;
  const translated = toTrpcError(toShopError(cause) ?? cause);
  if (translated !== null) throw translated;
  if (answer.error.code === 'INTERNAL_SERVER_ERROR') {
    ctx.deps.log.error(
      { requestId: ctx.requestId, procedure: path, err: cause ?? answer.error },
      'procedure failed',
    );
  }
  return answer;
});

const base = t.procedure.use(translateErrors);

/** No sign-in needed: secret links. */
export const anyone = base.meta({ access: 'anyone' });

/** A signed-in person, in no particular shop: choosing or founding one. */
export const signedIn = base.meta({ access: 'signed-in' }).use(({ ctx, next }) => {
  if (ctx.signedIn === null) throw new TRPCError({ code: 'UNAUTHORIZED' });
  return next({ ctx: { signedIn: ctx.signedIn } });
});

/** A member of the chosen shop whose role has this permission. */
export function allowed(permission: Permission) {
  return base.meta({ access: permission }).use(async ({ ctx, next }) => {
    if (ctx.signedIn === null) throw new TRPCError({ code: 'UNAUTHORIZED' });
    const actor = await ctx.actor();
    if (actor === null)
      throw new ShopError(
        'NOT_ALLOWED',
        'You do not belong to a shop yet: found one or ask for an invitation.',
      );
    if (!may(actor.role, permission)) throw new TRPCError({ code: 'FORBIDDEN' });
    return next({ ctx: { signedIn: ctx.signedIn, who: actor } });
  });
}
