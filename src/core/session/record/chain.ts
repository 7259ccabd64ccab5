/** Fingerprint of text as lower-case hex, SHA-256 over its UTF-8 bytes; given in by the store. */
export type Fingerprint = (text: string) => string;

/** One line of a session file taken apart, or what is wrong with it. */
export type Link =
  | { readonly kind: 'whole'; readonly value: unknown; readonly link: string }
  | { readonly kind: 'torn' }
  | { readonly kind: 'altered' }
  | { readonly kind: 'broken-chain'; readonly value: unknown; readonly link: string };

const tail = /,"link":"([0-9a-f]{64})"\}$/;

/**
 * Writes one line. The link is taken over the very bytes that stand before it, which hold the link
 * of the line before, so that a change anywhere breaks every line from there on.
 */
export function forgeLine(value: object, previous: string, fingerprint: Fingerprint) {
  const body = JSON.stringify({ ...value, previous }).slice(0, -1);
  const link = fingerprint(body);
  return { line: `${body},"link":"${link}"}\n`, link };
}

/** Reads one line (without its newline) and holds it against the link of the line before. */
export function readLine(line: string, previous: string, fingerprint: Fingerprint): Link {
  const link = tail.exec(line)?.[1];
  if (link === undefined) return { kind: 'torn' };
  const body = line.slice(0, -(link.length + ',"link":"'.length + '"}'.length));
  if (fingerprint(body) !== link) return { kind: 'altered' };
  const value = parsed(line);
  // Its link fits, and it was never one of ours: the links hold no secret, anybody can make one.
  if (value === undefined) return { kind: 'altered' };
  if (value.previous !== previous) return { kind: 'broken-chain', value, link };
  return { kind: 'whole', value, link };
}

function parsed(line: string): { readonly previous?: unknown } | undefined {
  try {
    const value: unknown = JSON.parse(line);
    return typeof value === 'object' && value !== null ? value : undefined;
  } catch {
    return undefined;
  }
}
