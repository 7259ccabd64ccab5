import { createHash } from 'node:crypto';

const style =
  'body{font:18px sans-serif;margin:1.5em;max-width:30em}input,button{font:inherit;display:block;margin:1em 0;max-width:100%}button{padding:.6em 1.2em}';

/** What a browser may do with our pages: nothing but show them in their style and send the form back here. */
const policy = [
  "default-src 'none'",
  `style-src 'sha256-${createHash('sha256').update(style).digest('base64')}'`,
  "form-action 'self'",
  "base-uri 'none'",
  "frame-ancestors 'none'",
].join('; ');

/** The heads of every answer. */
export const heads: Readonly<Record<string, string>> = {
  'content-type': 'text/html; charset=utf-8',
  'content-security-policy': policy,
  'cache-control': 'no-store',
  'referrer-policy': 'no-referrer',
  'x-content-type-options': 'nosniff',
  'x-frame-options': 'DENY',
  'cross-origin-resource-policy': 'same-origin',
  connection: 'close',
};

const escaped = (text: string): string =>
  text.replace(/[&<>"']/g, (mark) => `&#${mark.charCodeAt(0)};`);

const page = (words: string, inside: string): string =>
  `<!doctype html><html lang="en"><head><meta charset="utf-8"><meta name="viewport" content="width=device-width,initial-scale=1"><title>A photo for the job</title><style>${style}</style></head><body><h1>A photo for the job</h1>${words === '' ? '' : `<p role="status">${escaped(words)}</p>`}${inside}</body></html>\n`;

const form =
  '<form method="post" enctype="multipart/form-data"><label for="photo">Take a picture</label><input id="photo" type="file" name="photo" accept="image/*" capture="environment" required><button>Send it</button></form><p>JPEG, PNG, WebP or GIF, 20 MB at most. It goes over plain HTTP: whoever is on this network could see it.</p>';

/** The form, under a few words on what became of the last picture. */
export const formPage = (words = ''): string => page(words, form);

/** A few words and nothing else. */
export const plainPage = (words: string): string => page(words, '');
