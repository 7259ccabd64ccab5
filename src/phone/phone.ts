import { randomBytes, timingSafeEqual } from 'node:crypto';
import { createServer, type IncomingMessage, type Server, type ServerResponse } from 'node:http';
import { maxPicture } from '../core/picture/picture.ts';
import { bad, good, type Parsed, type Problem } from '../core/problem.ts';
import { boundaryOf, readForm } from './multipart.ts';
import { formPage, heads, plainPage } from './page.ts';

/** The page that is open to a telephone: its address, and how it is shut. */
export type Phone = { readonly url: string; readonly stop: () => void };

export type PhoneListener = {
  /** Takes the bytes that were sent; says what is wrong with them, if anything is. */
  readonly take: (bytes: Uint8Array) => Problem | undefined;
  /** Nobody sent anything for so long that it was shut. */
  readonly idle: () => void;
};

/** How long things may take, in milliseconds. Tests are shorter of patience. */
export type Patience = { readonly idle: number; readonly request: number };

const usual: Patience = { idle: 10 * 60_000, request: 60_000 };

/** Bytes of a body beyond the picture: its marks and its head. */
const around = 16_000;

/** An answer: its number and its page. */
type Answer = readonly [status: number, page: string];

/**
 * Opens one small page on the network, at an address that nobody can guess: a form that takes a
 * picture. There is nothing else to read, to list or to change; it is gone when it is stopped.
 * @param host address of this machine on the network; it listens on that one alone
 */
export function openPhone(
  host: string,
  listener: PhoneListener,
  patience: Patience = usual,
): Promise<Parsed<Phone>> {
  const path = `/${randomBytes(16).toString('base64url')}`;
  const server = createServer({
    headersTimeout: Math.min(10_000, patience.request),
    requestTimeout: patience.request,
    connectionsCheckingInterval: Math.min(1000, patience.request),
    maxHeaderSize: 8192,
  });
  server.maxConnections = 8;
  return new Promise((resolve) => {
    server.once('error', (error: NodeJS.ErrnoException) => resolve(bad(refusedBy(error))));
    server.listen(0, host, () => {
      const address = server.address();
      if (address === null || typeof address === 'string') throw new Error('a port was asked for');
      const door = new Door(server, { host: `${host}:${address.port}`, path }, listener);
      door.open(patience.idle);
      resolve(good({ url: `http://${host}:${address.port}${path}`, stop: door.stop }));
    });
  });
}

const refusedBy = ({ code }: NodeJS.ErrnoException): Problem => ({
  code: 'phone-refused',
  message: `The system opens no page for the phone (${code ?? 'no reason given'}).`,
  mend: 'Check the network, or keep the photo by its path.',
});

class Door {
  readonly #server: Server;
  readonly #place: { readonly host: string; readonly path: string };
  readonly #listener: PhoneListener;
  #idle: NodeJS.Timeout | undefined;
  #busy = false;

  constructor(
    server: Server,
    place: { readonly host: string; readonly path: string },
    listener: PhoneListener,
  ) {
    this.#server = server;
    this.#place = place;
    this.#listener = listener;
  }

  open(idle: number): void {
    // The terminal alone keeps the program alive.
    this.#server.unref();
    this.#idle = setTimeout(() => {
      this.stop();
      this.#listener.idle();
    }, idle).unref();
    this.#server.on('request', (request, response) => {
      this.#answer(request).then(
        (answer) => send(request, response, answer),
        () => request.destroy(),
      );
    });
  }

  readonly stop = (): void => {
    clearTimeout(this.#idle);
    this.#server.close();
    this.#server.closeAllConnections();
  };

  async #answer(request: IncomingMessage): Promise<Answer> {
    const { host, path } = this.#place;
    if (request.headers.host !== host || !isSame(request.url ?? '', path))
      return [404, plainPage('There is nothing here.')];
    if (request.method === 'GET') return [200, formPage()];
    if (request.method !== 'POST') return [405, plainPage('Only the form is taken here.')];
    if (this.#busy) return [409, plainPage('One picture after the other: send it again.')];
    this.#busy = true;
    try {
      return await this.#upload(request);
    } finally {
      this.#busy = false;
    }
  }

  async #upload(request: IncomingMessage): Promise<Answer> {
    const boundary = boundaryOf(request.headers['content-type']);
    if (boundary === undefined || request.headers['content-encoding'] !== undefined)
      return [415, formPage('That was no form of this page.')];
    const body = await bodyOf(request);
    if (body === undefined) return [413, formPage('That is larger than 20 MB: save it smaller.')];
    const sent = readForm(body, boundary);
    if (sent.kind === 'nothing') return [422, formPage('No picture was chosen.')];
    if (sent.kind === 'broken') return [400, formPage('That did not arrive whole: send it again.')];
    const problem = this.#listener.take(sent.bytes);
    if (problem !== undefined) return [422, formPage(`${problem.message} ${problem.mend}`)];
    this.#idle?.refresh();
    return [200, formPage('Taken: it stands on the screen, where its caption is asked. Another?')];
  }
}

/** Compares without telling by the time it takes how much of it is right. */
function isSame(one: string, other: string): boolean {
  const [given, wanted] = [Buffer.from(one), Buffer.from(other)];
  return given.length === wanted.length && timingSafeEqual(given, wanted);
}

/** The body of a request, as it comes in; undefined as soon as it is larger than a picture may be. */
async function bodyOf(request: IncomingMessage): Promise<Uint8Array | undefined> {
  const most = maxPicture + around;
  if (Number(request.headers['content-length'] ?? 0) > most) return undefined;
  const chunks: Uint8Array[] = [];
  let length = 0;
  for await (const chunk of request.iterator({ destroyOnReturn: false })) {
    const bytes = chunk as Uint8Array;
    length += bytes.length;
    if (length > most) return undefined;
    chunks.push(bytes);
  }
  return Buffer.concat(chunks);
}

/** How long what is still coming in is let run out unread, in milliseconds: a browser reads its answer only then. */
const runOut = 3000;

function send(request: IncomingMessage, response: ServerResponse, [status, text]: Answer): void {
  response.writeHead(status, {
    ...heads,
    'content-length': Buffer.byteLength(text),
    ...(status === 405 && { allow: 'GET, POST' }),
  });
  response.end(text);
  if (request.readableEnded) return;
  request.resume();
  setTimeout(() => request.destroy(), runOut).unref();
}
