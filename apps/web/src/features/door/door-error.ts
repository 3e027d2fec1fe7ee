// What the sign-in library answers, as a sentence at the form. Pure.

/** The part of its error that decides. */
export type DoorProblem = {
  readonly code?: string | undefined;
  readonly message?: string | undefined;
  readonly status?: number | undefined;
};

const SENTENCES: Readonly<Record<string, string>> = {
  INVALID_EMAIL_OR_PASSWORD: 'That e-mail and password don’t go together. Try again, or get a new password.',
  USER_ALREADY_EXISTS: 'There is an account with that e-mail already. Sign in instead.',
  USER_ALREADY_EXISTS_USE_ANOTHER_EMAIL: 'There is an account with that e-mail already. Sign in instead.',
  PASSWORD_TOO_SHORT: 'Use 12 characters or more; four unrelated words do well.',
  PASSWORD_TOO_LONG: 'Use 128 characters at the most.',
  INVALID_TOKEN: 'This link has been used or is older than an hour. Ask for a new one.',
  EMAIL_PASSWORD_SIGN_UP_DISABLED: 'New accounts come by invitation here. Ask the shop’s owner for one.',
  EMAIL_AND_PASSWORD_SIGN_UP_IS_NOT_ENABLED:
    'New accounts come by invitation here. Ask the shop’s owner for one.',
};

const TOO_MANY_STATUS = 429;

export function doorSentence(problem: DoorProblem): string {
  if (problem.status === TOO_MANY_STATUS) return 'Too many tries. Wait a minute, then try again.';
  const known = problem.code === undefined ? undefined : SENTENCES[problem.code];
  if (known) return known;
  // The password rules are the API's own and come with their sentence.
  if (problem.code === 'PASSWORD_NOT_ACCEPTED' && problem.message) return problem.message;
  return 'The server gave no answer. Nothing is lost; try again in a moment.';
}
