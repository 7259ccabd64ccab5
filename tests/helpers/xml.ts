/**
 * A strict reader of the XML that our pictures may use: elements, quoted attributes, the five named
 * entities. After W3C XML 1.0, productions 2, 10, 14, 39-44 and 66-68; from memory.
 */
export function xmlTrouble(text: string): string | undefined {
  const open: string[] = [];
  let [at, roots] = [0, 0];
  while (at < text.length) {
    token.lastIndex = at;
    const match = token.exec(text);
    if (match === null) return `unreadable at ${at}: ${text.slice(at, at + 40)}`;
    if (open.length === 0 && match[2] !== undefined) roots += 1;
    const trouble = take(match, open);
    if (trouble !== undefined) return `${trouble} at ${at}`;
    at += match[0].length;
  }
  if (open.length > 0) return `not closed: ${open.join(' ')}`;
  return roots === 1 ? undefined : `${roots} roots`;
}

const token = /<(\/?)([A-Za-z][\w:.-]*)((?:\s+[A-Za-z][\w:.-]*="[^"<]*")*)\s*(\/?)>|[^<]+/gy;

/** Takes one tag or one run of text; elements that stay open are kept in `open`. */
function take(match: RegExpExecArray, open: string[]): string | undefined {
  const [whole, close, name, attributes = '', empty] = match;
  if (name === undefined)
    return open.length === 0 && whole.trim() !== ''
      ? 'text outside the root'
      : badCharacters(whole);
  if (close === '/') return open.pop() === name ? undefined : `</${name}> closes nothing`;
  if (empty !== '/') open.push(name);
  const names = [...attributes.matchAll(/([\w:.-]+)="/g)].map(([, one]) => one);
  return new Set(names).size === names.length ? badCharacters(attributes) : 'an attribute twice';
}

function badCharacters(text: string): string | undefined {
  if (/&(?!(?:amp|lt|gt|quot|apos);)/.test(text)) return 'a bare ampersand';
  if (/[^\t\n\r\u0020-\ud7ff\ue000-\ufffd\u{10000}-\u{10ffff}]/u.test(text))
    return 'a character that XML has not';
  return undefined;
}
