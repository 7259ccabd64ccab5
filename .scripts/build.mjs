// Bundles the program: one entry, production React, screens as a lazily loaded chunk.
import { build } from 'esbuild';
import { readFileSync, rmSync, writeFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { banner } from './lean/builtins.mjs';
import { gather } from './lean/gather.mjs';
import { lean } from './lean/plugin.mjs';
import { licencesOf } from './licences.mjs';

const root = resolve(import.meta.dirname, '..');

export async function buildProgram({
  outdir = resolve(root, '.build'),
  entry = 'src/main.ts',
  name = 'droplight',
  // A program to compare with is bundled the same way, and takes its libraries as they are.
  isLean = true,
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
    plugins: isLean ? [lean()] : [],
    logLevel: 'warning',
  });
  await gather(outdir, metafile);
  writeFileSync(resolve(outdir, 'LICENCES.txt'), licencesOf(Object.keys(metafile.inputs), root));
  await buildBin(outdir);
  // What the bundle leaves to be found at run time.
  return Object.values(metafile.outputs).flatMap(({ imports }) =>
    imports.filter(({ external }) => external).map(({ path }) => path),
  );
}

/** The word `droplight` of a shell: it starts the bundle, or says which Node that needs. */
async function buildBin(outdir) {
  const { engines, version } = JSON.parse(readFileSync(resolve(root, 'package.json'), 'utf8'));
  const needed = engines.node.match(/\d+/g).map(Number);
  await build({
    entryPoints: [resolve(root, '.scripts/bin.cjs')],
    outfile: resolve(outdir, 'bin.cjs'),
    bundle: true,
    external: ['./droplight.js'],
    platform: 'node',
    format: 'cjs',
    // Parsed by the oldest that is still met; what runs below is the bundle's own target.
    target: 'node12.22',
    define: { NEEDED_NODE: JSON.stringify(needed), VERSION: JSON.stringify(version) },
    logLevel: 'warning',
  });
}

if (process.argv[1] === import.meta.filename) await buildProgram();
