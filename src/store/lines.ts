import { bad, type Parsed, type Problem } from '../core/problem.ts';
import { refusal, storeError } from './files.ts';
import { textOf } from './text.ts';

/** Longest line that is taken, in bytes: a note of 20,000 signs, escaped, is an eighth of it. */
export const maxLine = 1_048_576;

const [newline, carriageReturn] = [0x0a, 0x0d];

/**
 * The lines of a stream as they arrive, without their ends. A line that is no text of ours is told
 * in its place and those behind it still count; what ends the reading early, such as a line without
 * an end, is told last.
 * @param name what the stream is called in what is told of it
 */
export async function* linesOf(
  stream: AsyncIterable<Uint8Array>,
  name: string,
): AsyncGenerator<Parsed<string>> {
  let open: Uint8Array[] = [];
  let length = 0;
  try {
    for await (const chunk of stream) {
      let start = 0;
      for (let end = chunk.indexOf(newline); end >= 0; end = chunk.indexOf(newline, start)) {
        if (length + end - start > maxLine) return yield bad(tooLong(name));
        yield lineOf([...open, chunk.subarray(start, end)], name);
        [open, length, start] = [[], 0, end + 1];
      }
      open.push(chunk.subarray(start));
      length += chunk.length - start;
      // A stream that never ends its line would fill the memory.
      if (length > maxLine) return yield bad(tooLong(name));
    }
  } catch (error) {
    return yield bad(refusal(storeError(error, name)));
  }
  if (length > 0) yield lineOf(open, name);
  return undefined;
}

function lineOf(parts: readonly Uint8Array[], name: string): Parsed<string> {
  const bytes = Buffer.concat(parts);
  const text = textOf(bytes.at(-1) === carriageReturn ? bytes.subarray(0, -1) : bytes, name);
  // Which line of a stream it was is told by its place among the answers.
  return text.kind === 'good' ? text : bad(...text.problems.map(({ line: _, ...one }) => one));
}

const tooLong = (file: string): Problem => ({
  code: 'line-too-long',
  file,
  message: `A line here is longer than ${maxLine / 1024} KiB.`,
  mend: 'Give one action a line. What stands behind this one was not read.',
});
