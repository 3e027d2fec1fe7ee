// Server components only: the job that an address names, or the "not found" page.

import { notFound } from 'next/navigation';
import { serverApi } from '../data/server-api.ts';
import { shownError } from '../data/shop-error.ts';
import type { OpenedJob } from './job-sheet.ts';

const JOB_NUMBER = /^\d{1,9}$/;

/** Reads something of the job; what is not there, not theirs or not for their role ends at "not found". */
export async function readJob<T>(
  number: string,
  read: (api: Awaited<ReturnType<typeof serverApi>>, opened: OpenedJob) => Promise<T>,
): Promise<{ readonly opened: OpenedJob; readonly sheet: T }> {
  if (!JOB_NUMBER.test(number)) notFound();
  const api = await serverApi();
  try {
    const opened = await api.job.byNumber.query({ number: Number(number) });
    return { opened, sheet: await read(api, opened) };
  } catch (error) {
    const { code } = shownError(error);
    if (code === 'NOT_FOUND' || code === 'NOT_ALLOWED') notFound();
    throw error;
  }
}
