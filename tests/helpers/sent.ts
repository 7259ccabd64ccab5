import { request } from 'node:http';

type Sending = {
  readonly method?: string;
  readonly path?: string;
  readonly heads?: Readonly<Record<string, string>>;
  readonly body?: Uint8Array | string;
};

export type Answered = {
  readonly status: number | undefined;
  readonly text: string;
  readonly heads: Readonly<Record<string, unknown>>;
};

/** Sends one request as it is told, to an address on this machine; status undefined where it was cut off. */
export function ask(url: string, sending: Sending = {}): Promise<Answered> {
  const { method = 'GET', path = new URL(url).pathname, heads = {}, body } = sending;
  const { hostname, port } = new URL(url);
  return new Promise((resolve) => {
    const cut = () => resolve({ status: undefined, text: '', heads: {} });
    const asking = request(
      { hostname, port, path, method, headers: { ...heads }, agent: false },
      (response) => {
        const chunks: Buffer[] = [];
        response.on('data', (chunk: Buffer) => chunks.push(chunk));
        response.on('error', cut);
        response.on('end', () =>
          resolve({
            status: response.statusCode,
            text: Buffer.concat(chunks).toString(),
            heads: response.headers,
          }),
        );
      },
    );
    asking.on('error', cut);
    asking.end(body);
  });
}

export const boundary = '----form7MA4YWxk';

/** A part of a form: its head and what it holds. */
export const part = (head: string, bytes: Uint8Array | string): Uint8Array =>
  Buffer.concat([
    Buffer.from(`--${boundary}\r\n${head}\r\n\r\n`),
    Buffer.from(bytes),
    Buffer.from('\r\n'),
  ]);

export const photoHead = (name = 'image.png'): string =>
  `Content-Disposition: form-data; name="photo"; filename="${name}"\r\nContent-Type: image/png`;

/** A form as a browser sends it. */
export const formOf = (...parts: readonly Uint8Array[]): Uint8Array =>
  Buffer.concat([...parts, Buffer.from(`--${boundary}--\r\n`)]);

/** Sends such a form. */
export const post = (
  url: string,
  body: Uint8Array,
  heads: Sending['heads'] = {},
): Promise<Answered> =>
  ask(url, {
    method: 'POST',
    body,
    heads: { 'content-type': `multipart/form-data; boundary=${boundary}`, ...heads },
  });
