// Lines of a stream of text, by line feed alone: JSON may hold other line breaks inside a string.

export async function* textLines(chunks: AsyncIterable<string>): AsyncGenerator<string> {
  let held = '';
  for await (const chunk of chunks) {
    const lines = (held + chunk).split('\n');
    held = lines.pop() ?? '';
    yield* lines;
  }
  if (held !== '') yield held;
}
