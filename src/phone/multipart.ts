/** The one file that a form sent, or why it is none. */
export type Sent =
  | { readonly kind: 'file'; readonly bytes: Uint8Array }
  | { readonly kind: 'nothing' }
  | { readonly kind: 'broken' };

const broken: Sent = { kind: 'broken' };

/** The mark between parts, as the head of a request names it (RFC 2046, 5.1.1); undefined for none. */
export function boundaryOf(contentType: string | undefined): string | undefined {
  const found = /^multipart\/form-data\s*;\s*boundary=(?:"([^"]+)"|([^\s;",]+))\s*$/i.exec(
    contentType ?? '',
  );
  const boundary = found?.[1] ?? found?.[2];
  return boundary !== undefined && /^[\w'()+,./:=? -]{0,69}[\w'()+,./:=?-]$/.test(boundary)
    ? boundary
    : undefined;
}

/** The head of the one part: its field, and the name that the file had where it came from. */
const disposition =
  /^content-disposition:\s*form-data\s*;\s*name="photo"\s*;\s*filename="([^"\r\n]*)"\s*$/i;

/** A name says nothing here; one that leads somewhere else was made to do harm. */
const leads = /[\\/\0]|^\.\.?$/;

/**
 * Reads the body of a form (RFC 7578) that must be one part, a file in the field `photo`. Anything
 * else in it, before it or behind it makes it broken.
 */
export function readForm(body: Uint8Array, boundary: string): Sent {
  const bytes = Buffer.from(body.buffer, body.byteOffset, body.byteLength);
  const opening = `--${boundary}\r\n`;
  const closing = Buffer.from(`\r\n--${boundary}--`);
  if (bytes.subarray(0, opening.length).toString('latin1') !== opening) return broken;
  const headEnd = bytes.indexOf('\r\n\r\n', opening.length - 2);
  if (headEnd < 0 || headEnd > 4000) return broken;
  const name = fileName(bytes.subarray(opening.length, headEnd).toString('utf8'));
  const start = headEnd + 4;
  // The first mark between parts must be the one that ends them all.
  const end = bytes.indexOf(`\r\n--${boundary}`, start - 2);
  const isEnd = end >= 0 && bytes.subarray(end, end + closing.length).equals(closing);
  const rest = bytes.subarray(end + closing.length).toString('latin1');
  if (name === undefined || leads.test(name) || !isEnd || !/^(\r\n)?$/.test(rest)) return broken;
  if (end < start || (name === '' && end === start)) return { kind: 'nothing' };
  return { kind: 'file', bytes: Uint8Array.from(bytes.subarray(start, end)) };
}

function fileName(head: string): string | undefined {
  const lines = head.split('\r\n').filter((line) => /^content-disposition:/i.test(line));
  return lines.length === 1 ? disposition.exec(lines[0] ?? '')?.[1] : undefined;
}
