'use client';

import { USUAL_ADHESIVES } from '@gusset/contracts/cutting';
import { GLUE_PAGE_CAUTION, glueUp, stepDetail, stepFigures, stepTitle, waitWords } from '@gusset/sheets';
import { formatMinutes, isRefusal } from '@gusset/units';
import { useMemo } from 'react';
import type { LengthRule } from '../../shared/job/length-rule.ts';
import { Caution } from '../../shared/marks/caution.tsx';
import type { CuttingJobSheet } from './cutting-types.ts';
import styles from './machine-pages.module.css';

export type AssemblyPageProps = { readonly sheet: CuttingJobSheet; readonly rule: LengthRule };

/** How the box goes together, with the stop before it is closed. */
export function AssemblyPage({ sheet, rule }: AssemblyPageProps) {
  const box = sheet.data.upstream.box ?? null;
  const { gluing } = sheet.input;
  const plan = useMemo(() => (box === null ? null : glueUp(box, { gluing })), [box, gluing]);
  if (plan === null) return null;
  const adhesive = USUAL_ADHESIVES[gluing.adhesive];
  if (isRefusal(plan)) {
    return (
      <section aria-labelledby="assembly-page" className={styles.page}>
        <h2 id="assembly-page" className={styles.title}>
          Assembly
        </h2>
        <p role="alert">
          {plan.refusal.why}. Accepted: {plan.refusal.allowed}. Warm the shop, or choose another glue below.
        </p>
      </section>
    );
  }
  return (
    <section aria-labelledby="assembly-page" className={styles.page}>
      <h2 id="assembly-page" className={styles.title}>
        Assembly
      </h2>
      <p className={styles.quiet}>
        {adhesive.name} at {gluing.temperatureC} °C: {formatMinutes(plan.waitMinutes)} of waiting in all
        {plan.curingFactor > 1 ? `, ${plan.curingFactor.toFixed(1)} times as long as at 20 °C` : ''}; open for{' '}
        {formatMinutes(adhesive.openMinutes)}. What stands on the tin comes first.
      </p>
      <Caution>{GLUE_PAGE_CAUTION}</Caution>
      <ol className={styles.panels}>
        {plan.steps.map((step) => (
          <li key={step.order} className={styles.panel} data-stop={step.what === 'try' ? '' : undefined}>
            <strong className={styles.mark}>{step.order}</strong>
            <div>
              <strong>{stepTitle(step)}</strong>
              {step.what === 'dry' || step.marks.length === 0 ? null : (
                <strong className={styles.frees}> {step.marks.join(', ')}</strong>
              )}
              <span className={styles.line}>{stepDetail(step, plan)}</span>
              {[stepFigures(step, rule.words), waitWords(step)]
                .filter((words) => words !== '')
                .map((words) => (
                  <span key={words} className={styles.line}>
                    {words}
                  </span>
                ))}
            </div>
          </li>
        ))}
      </ol>
    </section>
  );
}
