// One router a kind, so that each procedure states its own permission and the web gets each sheet's own types.
import { idSchema } from '@gusset/contracts/common';
import { SHEETS } from '@gusset/contracts/sheet';
import type { SheetOutcome } from '@gusset/sheets';
import { z } from 'zod';
import type { Actor, Deps } from '../deps.ts';
import { allowed, router } from '../trpc/procedures.ts';
import { boxBinding } from './bindings/box.binding.ts';
import { briefBinding } from './bindings/brief.binding.ts';
import { cuttingBinding } from './bindings/cutting.binding.ts';
import { partsBinding } from './bindings/parts.binding.ts';
import { planBinding } from './bindings/plan.binding.ts';
import { priceBinding } from './bindings/price.binding.ts';
import { soundBinding } from './bindings/sound.binding.ts';
import { surveyBinding } from './bindings/survey.binding.ts';
import { checkIssue, issueSheet, readSheet, type SheetView, saveDraft } from './sheet.service.ts';
import type { SheetBinding } from './sheet-binding.ts';

/** The view with the kind's own types put back; sound for the reason given at `anySheet`. */
type TypedSheetView<Input, Facts, Upstream, Result> = Omit<
  SheetView,
  'input' | 'facts' | 'upstream' | 'outcome' | 'issue'
> & {
  readonly input: Input;
  readonly facts: Facts;
  readonly upstream: Upstream;
  readonly outcome: SheetOutcome<Result>;
  readonly issue:
    | (NonNullable<SheetView['issue']> & { readonly input: Input; readonly result: Result })
    | null;
};

/** Of sound and box, whose sheet; left out = that of the job's first enclosure. */
const ofEnclosure = { enclosureId: idSchema.optional() };
const versionOfDraft = z.number().int().min(0).max(2_000_000_000);

function routerOf<Input, Facts, Upstream, Result>(binding: SheetBinding<Input, Facts, Upstream, Result>) {
  const { kind, inputSchema } = binding.definition;
  const { readPermission, editPermission } = SHEETS[kind];
  const typed = (view: SheetView) => view as TypedSheetView<Input, Facts, Upstream, Result>;
  const at = z.strictObject({ jobId: idSchema, ...ofEnclosure });
  type Call = { readonly ctx: { readonly deps: Deps; readonly who: Actor } };
  return router({
    read: allowed(readPermission)
      .input(at)
      .query(async ({ ctx, input }: Call & { input: z.infer<typeof at> }) =>
        typed(await readSheet(ctx.deps, ctx.who, kind, input)),
      ),

    save: allowed(editPermission)
      .input(z.strictObject({ jobId: idSchema, ...ofEnclosure, version: versionOfDraft, input: inputSchema }))
      .mutation(async ({ ctx, input }) => typed(await saveDraft(ctx.deps, ctx.who, kind, input))),

    issue: allowed(editPermission)
      .input(z.strictObject({ jobId: idSchema, ...ofEnclosure, version: versionOfDraft }))
      .mutation(async ({ ctx, input }) => typed(await issueSheet(ctx.deps, ctx.who, kind, input))),

    check: allowed(editPermission)
      .input(z.strictObject({ jobId: idSchema, issueId: idSchema }))
      .mutation(async ({ ctx, input }) => typed(await checkIssue(ctx.deps, ctx.who, kind, input))),
  });
}

export const sheetRouter = router({
  brief: routerOf(briefBinding),
  survey: routerOf(surveyBinding),
  sound: routerOf(soundBinding),
  parts: routerOf(partsBinding),
  plan: routerOf(planBinding),
  box: routerOf(boxBinding),
  cutting: routerOf(cuttingBinding),
  price: routerOf(priceBinding),
});
