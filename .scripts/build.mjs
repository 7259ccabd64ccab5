// Bundles the program: one entry, production React, screens as a lazily loaded chunk.
import { build } from 'esbuild';
import { rmSync } from 'node:fs';
import { resolve } from 'node:path';

const root = resolve(import.meta.dirname, '..');
const banner =
  "import { createRequire as makeRequire } from 'node:module'; const require = makeRequire(import.meta.url);";

export async function buildProgram({
  outdir = resolve(root, '.build'),
  entry = 'src/main.ts',
  name = 'droplight',
} = {}) {
  rmSync(outdir, { recursive: true, force: true });
  const { metafile } = await build({
    metafile: true,
    entryPoints: { [name]: resolve(root, entry) },
    outdir,
    bundle: true,
    splitting: true,
    format: 'esm',
    platform: 'node',
    // Some libraries say in `main` what only Node can load, and in `module` what can be bundled.
    mainFields: ['module', 'main'],
    target: 'node22',
    minify: true,
    legalComments: 'none',
    define: { 'process.env.NODE_ENV': '"production"', 'process.env.DEV': '"false"' },
    alias: { 'react-devtools-core': resolve(root, '.scripts/no-devtools.mjs') },
    banner: { js: banner },
    logLevel: 'warning',
  });
  // What the bundle leaves to be found at run time.
  return Object.values(metafile.outputs).flatMap(({ imports }) =>
    imports.filter(({ external }) => external).map(({ path }) => path),
  );
}

if (process.argv[1] === import.meta.filename) await buildProgram();
