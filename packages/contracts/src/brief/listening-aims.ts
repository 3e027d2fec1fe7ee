// No schema here: the screen that lists them need not send the validator.

/** What the listening is for, in the order a shop asks. */
export const LISTENING_AIMS = ['deep', 'loud', 'smooth', 'balanced'] as const;
export const LISTENING_AIM_WORDS: Record<(typeof LISTENING_AIMS)[number], string> = {
  deep: 'Deep: the lowest notes matter most',
  loud: 'Loud: level matters most',
  smooth: 'Smooth: even and tight',
  balanced: 'Balanced: a bit of each',
};
