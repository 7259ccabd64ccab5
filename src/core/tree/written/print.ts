/** Longest line that a small object or list is kept on. */
const width = 100;

const isBranch = (value: unknown): value is object => typeof value === 'object' && value !== null;

/** Whether a value holds objects or lists that hold more of them. */
const isDeep = (value: object): boolean =>
  Object.values(value).some((one) => isBranch(one) && Object.values(one).some(isBranch));

function onOneLine(value: unknown): string {
  if (!isBranch(value)) return JSON.stringify(value);
  if (Array.isArray(value)) return `[${value.map(onOneLine).join(', ')}]`;
  const entries = Object.entries(value).map(
    ([key, one]) => `${JSON.stringify(key)}: ${onOneLine(one)}`,
  );
  return entries.length === 0 ? '{}' : `{ ${entries.join(', ')} }`;
}

function lines(value: unknown, indent: number, before: number): string {
  const flat = onOneLine(value);
  if (!isBranch(value) || (!isDeep(value) && before + flat.length < width)) return flat;
  const inner = ' '.repeat(indent + 2);
  const parts = Array.isArray(value)
    ? value.map((one: unknown) => inner + lines(one, indent + 2, indent + 2))
    : Object.entries(value).map(([key, one]) => {
        const head = `${inner}${JSON.stringify(key)}: `;
        return head + lines(one, indent + 2, head.length);
      });
  const [open, close] = Array.isArray(value) ? ['[', ']'] : ['{', '}'];
  return `${open}\n${parts.join(',\n')}\n${' '.repeat(indent)}${close}`;
}

/** A tree as the text of a file that people go on writing in: what is small stands on one line. */
export const printTree = (tree: object): string => `${lines(tree, 0, 0)}\n`;
