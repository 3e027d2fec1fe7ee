// The customer's own calls, without the app's data layer: this page has to be light on a phone.

export type Answered =
  | { readonly isTaken: true }
  | { readonly isTaken: false; readonly message: string; readonly field: string | null };

const NOT_REACHED: Answered = {
  isTaken: false,
  message: 'The shop’s server was not reached. What you typed is still here; try again in a moment.',
  field: null,
};

export async function sendAnswer(act: 'approve' | 'decline' | 'ask', input: unknown): Promise<Answered> {
  try {
    const answer = await fetch(`/api/trpc/customerQuote.${act}`, {
      method: 'POST',
      headers: { 'content-type': 'application/json' },
      body: JSON.stringify(input),
    });
    return answer.ok ? { isTaken: true } : refusalOf(await answer.json());
  } catch {
    return NOT_REACHED; // no network, or an answer that is none of ours
  }
}

/** The sentence out of an error answer of the API, and the field it belongs to. */
export function refusalOf(body: unknown): Answered {
  const shop = at(at(at(body, 'error'), 'data'), 'shop');
  const message = at(shop, 'message');
  if (typeof message !== 'string') return NOT_REACHED;
  const fields = at(shop, 'fields');
  const field = Array.isArray(fields) ? at(fields[0], 'path') : null;
  return { isTaken: false, message, field: typeof field === 'string' ? field : null };
}

function at(value: unknown, key: string): unknown {
  return typeof value === 'object' && value !== null ? Reflect.get(value, key) : undefined;
}
