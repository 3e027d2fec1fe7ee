// One answer a document, in order. A document that can't be read or solved gets a refusal on its own line and doesn't
// keep the others from their answers.
import { firstRefusal } from '@gusset/contracts/acoustics';
import { isRefusal, type Refusal, refuse } from '@gusset/units';
import type { SolveEngine, SolveOptions } from './engine.ts';

export type AnswerLine = {
  /** JSON without its line feed. */
  readonly text: string;
  readonly isRefused: boolean;
  /** What broke inside the engine, where something did; null = nothing. */
  readonly failure: Error | null;
};

const SHOWN_CHARACTERS = 80; // of a line that isn't JSON

/** Blank lines are passed over. */
export async function* answerLines(
  engine: SolveEngine,
  lines: AsyncIterable<string>,
  options: SolveOptions,
): AsyncGenerator<AnswerLine> {
  let lineNumber = 0;
  for await (const line of lines) {
    lineNumber++;
    if (line.trim() === '') continue;
    const document = readJson(line, lineNumber);
    yield isRefusal(document) ? written(null, document) : await answered(engine, document.value, options);
  }
}

function readJson(line: string, lineNumber: number): { readonly value: unknown } | Refusal {
  try {
    return { value: JSON.parse(line) };
  } catch (error) {
    if (!(error instanceof SyntaxError)) throw error;
    return refuse('', {
      allowed: 'one JSON document a line',
      got: line.slice(0, SHOWN_CHARACTERS),
      why: `line ${lineNumber} is not JSON`,
    });
  }
}

async function answered(engine: SolveEngine, document: unknown, options: SolveOptions): Promise<AnswerLine> {
  const id = idOf(document);
  const parsed = engine.inputSchema.safeParse(document);
  if (!parsed.success) return written(id, firstRefusal(parsed.error, document));
  try {
    return written(id, await engine.solve(parsed.data, options));
  } catch (error) {
    // A fault of ours: this line says so, the shell hears it on stderr, and the next documents are still answered.
    const failure = error instanceof Error ? error : new Error(String(error));
    const refusal = refuse('', {
      allowed: 'a document that the engine can answer',
      got: null,
      why: `the ${engine.name} engine failed on it`,
    });
    return { ...written(id, refusal), failure };
  }
}

type Id = string | number | null;

function idOf(document: unknown): Id {
  if (typeof document !== 'object' || document === null || !('id' in document)) return null;
  return typeof document.id === 'string' || typeof document.id === 'number' ? document.id : null;
}

/** The id of the document leads, whether or not the engine repeats it. */
function written(id: Id, answer: unknown): AnswerLine {
  const isRefused = isRefusal(answer);
  const named = typeof answer === 'object' && answer !== null ? { id, ...answer } : { id, answer };
  return { text: JSON.stringify(named), isRefused, failure: null };
}
