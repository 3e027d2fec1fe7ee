'use client';

import { profileMark, type TestFitStanding, testFitStanding } from '@gusset/sheets';
import { formatInstant } from '@gusset/units';
import { Button } from '../../shared/controls/button.tsx';
import { Verdict, type VerdictTone } from '../../shared/marks/verdict.tsx';
import { useDisplay } from '../../shared/shell/display-provider.tsx';
import { usePerson } from '../../shared/shell/person.tsx';
import styles from './cutting-screen.module.css';
import type { CuttingJobSheet } from './cutting-types.ts';

const STANDINGS: Readonly<
  Record<
    TestFitStanding,
    { readonly tone: VerdictTone; readonly words: string; readonly line: string | null }
  >
> = {
  'not-tried': {
    tone: 'check',
    words: 'Not test-fitted',
    line: 'Try the side profile in the car, from cardboard or scrap, before anything is cut.',
  },
  'profile-changed': {
    tone: 'check',
    words: 'Not test-fitted: the profile has changed since',
    line: 'A mock-up of an earlier profile was tried. Try this one.',
  },
  failed: {
    tone: 'fail',
    words: 'The mock-up did not go in and out',
    line: 'Change the box on sheet 04 before anything is cut.',
  },
  passed: { tone: 'pass', words: 'Test-fitted: a mock-up went in and came out', line: null },
};

/** Whether a mock-up has been in and out; who tried it says so here, and can take it back. */
export function TestFitTick({ sheet }: { readonly sheet: CuttingJobSheet }) {
  const { name } = usePerson();
  const { shop } = useDisplay();
  const box = sheet.data.upstream.box ?? null;
  if (box === null) return null;
  const testFit = sheet.input.testFit ?? null;
  const standing = testFitStanding(testFit, box);
  const { tone, words, line } = STANDINGS[standing];
  const tried = (went: boolean) => () =>
    sheet.changeNow({
      testFit: {
        profile: profileMark(box),
        wentIn: went,
        cameOut: went,
        by: name,
        at: new Date().toISOString(),
      },
    });
  const isSettled = standing === 'passed' || standing === 'failed';
  return (
    <div className={styles.notes}>
      <Verdict tone={tone} words={words}>
        {line === null ? null : <p>{line}</p>}
        {testFit === null ? null : (
          <p>
            {testFit.by}, {formatInstant(testFit.at, { zone: shop.timeZone, locale: shop.locale })}
          </p>
        )}
      </Verdict>
      {sheet.mayEdit ? (
        <div className={styles.acts} data-screen-only="">
          {isSettled ? (
            <Button look="quiet" onPress={() => sheet.changeNow({ testFit: null })}>
              Take that back
            </Button>
          ) : (
            <>
              <Button onPress={tried(true)}>It went in and came out</Button>
              <Button look="quiet" onPress={tried(false)}>
                It did not
              </Button>
            </>
          )}
        </div>
      ) : null}
    </div>
  );
}
