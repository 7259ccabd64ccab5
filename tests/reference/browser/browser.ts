import { mkdtempSync, rmSync } from 'node:fs';
import { createRequire } from 'node:module';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { pathToFileURL } from 'node:url';

/*
 * Outside checks: Chromium, driven by puppeteer-core, and jsQR, a reader of codes, all by other hands. They
 * are large, so they are installed on their own: npm ci --prefix tests/reference/browser
 */
const here = createRequire(import.meta.url);

export const absent = 'not installed: npm ci --prefix tests/reference/browser';

function resolved(name: string): string | undefined {
  try {
    return here.resolve(name);
  } catch {
    // Not installed is told by the tests, which are skipped with the words above.
    return undefined;
  }
}

async function load<T>(name: string): Promise<T | undefined> {
  const path = resolved(name);
  return path === undefined ? undefined : ((await import(pathToFileURL(path).href)) as T);
}

/** Reads a code out of a picture: four bytes a dot. */
type ReadCode = (
  dots: Uint8ClampedArray,
  width: number,
  height: number,
  how: { readonly inversionAttempts: 'dontInvert' },
) => { readonly data: string } | null;

const jsqr = resolved('jsqr');
export const readCode =
  jsqr === undefined ? undefined : (here(jsqr) as ReadCode | { default: ReadCode });

/** What the tests ask of a browser's page. */
export type BrowserPage = {
  readonly goto: (url: string) => Promise<{ status(): number } | null>;
  readonly evaluate: <T>(script: string) => Promise<T>;
  readonly $: (selector: string) => Promise<{ uploadFile(path: string): Promise<void> } | null>;
  readonly click: (selector: string) => Promise<void>;
  readonly waitForNavigation: () => Promise<{ status(): number } | null>;
  readonly on: {
    (event: 'console', hear: (said: { type(): string; text(): string }) => void): void;
    (event: 'request', hear: (asked: { url(): string }) => void): void;
    (event: 'pageerror', hear: (error: Error) => void): void;
  };
  readonly setViewport: (size: {
    readonly width: number;
    readonly height: number;
  }) => Promise<void>;
  readonly emulateMediaFeatures: (
    features: readonly { readonly name: string; readonly value: string }[],
  ) => Promise<void>;
  readonly pdf: (how: { readonly preferCSSPageSize: boolean }) => Promise<Uint8Array>;
};

type Launched = {
  readonly newPage: () => Promise<BrowserPage>;
  readonly close: () => Promise<void>;
};
type Puppeteer = {
  readonly default: { readonly launch: (how: object) => Promise<Launched> };
};
type Chromium = {
  readonly default: { readonly args: readonly string[]; executablePath(): Promise<string> };
  readonly inflate: (path: string) => Promise<string>;
};

export type Browser = Launched;

export const isInstalled = resolved('puppeteer-core') !== undefined;

/** Unpacks the browser into a folder of its own, with the libraries that it wants of a system, and starts it. */
export async function startBrowser(): Promise<Browser> {
  const [puppeteer, chromium] = [
    await load<Puppeteer>('puppeteer-core'),
    await load<Chromium>('@sparticuz/chromium'),
  ];
  const packed = resolved('@sparticuz/chromium');
  if (puppeteer === undefined || chromium === undefined || packed === undefined)
    throw new Error(absent);
  const folder = mkdtempSync(join(tmpdir(), 'droplight-browser-'));
  const before = process.env['TMPDIR'];
  process.env['TMPDIR'] = folder;
  try {
    const libraries = await chromium.inflate(join(dirname(packed), '..', 'bin', 'al2023.tar.br'));
    const browser = await puppeteer.default.launch({
      executablePath: await chromium.default.executablePath(),
      args: [...chromium.default.args, '--no-sandbox'],
      headless: 'shell',
      env: { ...process.env, LD_LIBRARY_PATH: join(libraries, 'lib') },
    });
    return {
      newPage: () => browser.newPage(),
      close: async () => {
        await browser.close();
        rmSync(folder, { recursive: true, force: true });
      },
    };
  } finally {
    if (before === undefined) delete process.env['TMPDIR'];
    else process.env['TMPDIR'] = before;
  }
}
