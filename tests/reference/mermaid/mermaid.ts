import { createRequire } from 'node:module';
import { pathToFileURL } from 'node:url';

/*
 * Outside checks: Mermaid's own parser and saxes, a strict XML parser, both by other hands. They
 * are large, so they are installed on their own: npm ci --prefix tests/reference/mermaid
 */
const here = createRequire(import.meta.url);

export const absent = 'not installed: npm ci --prefix tests/reference/mermaid';

type Parser = (text: string) => Promise<unknown>;

function resolved(name: string): string | undefined {
  try {
    return here.resolve(name);
  } catch {
    // Not installed is told by the tests, which are skipped with the words above.
    return undefined;
  }
}

/** Mermaid's parser; it cleans labels with a browser's means, so a window is lent to it. */
async function loadMermaid(): Promise<Parser | undefined> {
  const [dom, path] = [resolved('jsdom'), resolved('mermaid')];
  if (dom === undefined || path === undefined) return undefined;
  const { JSDOM } = (await import(pathToFileURL(dom).href)) as {
    JSDOM: new (page: string) => { window: { document: object } };
  };
  const { window } = new JSDOM('<body></body>');
  Object.assign(globalThis, { window, document: window.document });
  const { default: mermaid } = (await import(pathToFileURL(path).href)) as {
    default: { parse: Parser };
  };
  return (text) => mermaid.parse(text);
}

export const mermaidParse = await loadMermaid();

type Saxes = {
  on(event: 'error', handler: (error: Error) => void): void;
  write(text: string): Saxes;
  close(): void;
};

/** What a strict XML parser finds wrong; undefined where it is not installed. */
export function xmlProblems(text: string): readonly string[] | undefined {
  const path = resolved('saxes');
  if (path === undefined) return undefined;
  const { SaxesParser } = here(path) as { SaxesParser: new (options: object) => Saxes };
  const problems: string[] = [];
  const parser = new SaxesParser({ xmlns: true });
  parser.on('error', ({ message }) => problems.push(message));
  parser.write(text).close();
  return problems;
}
