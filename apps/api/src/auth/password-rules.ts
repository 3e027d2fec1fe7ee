// What a password may not be. Length is checked by the auth library (12 to 128); no composition rules, no expiry.

/** Longest and commonest bases of leaked passwords, twelve letters and more or repeated to that length. */
const COMMON = [
  'password',
  'passwort',
  'qwertyuiop',
  'qwerty',
  'asdfghjkl',
  'letmein',
  'iloveyou',
  'administrator',
  'welcome',
  'football',
  'baseball',
  'sunshine',
  'princess',
  'superman',
  'abc123',
  '123456789012',
  '123456',
  '111111',
  '000000',
];
const OWN_WORDS = ['gusset'];

/** A sentence for the field, or null when the password is accepted. */
export function passwordProblem(password: string, email: string): string | null {
  const plain = letters(password);
  const mailName = email.split('@')[0] ?? '';
  if (new Set(password).size < 5)
    return 'Use at least five different characters, for instance four unrelated words.';
  if (mailName.length >= 4 && plain.includes(letters(mailName))) {
    return 'Leave your own e-mail name out of the password.';
  }
  const stem = [...COMMON, ...OWN_WORDS].reduce((rest, word) => rest.replaceAll(word, ''), plain);
  if (stem.replace(/\p{N}/gu, '').length < 4)
    return 'That is one of the passwords people guess first. Try four unrelated words.';
  return null;
}

/** Letters and digits of any script, in lower case. */
function letters(text: string): string {
  return text.toLowerCase().replace(/[^\p{L}\p{N}]/gu, '');
}
