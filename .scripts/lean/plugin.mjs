// What the first frame does without: libraries below Ink that load much of Unicode, and all of Node's
// `fetch`, before they are asked for anything. What they do stays as it is; it is loaded when it is needed.
import { createRequire } from 'node:module';
import { readFileSync } from 'node:fs';
import { extname, join } from 'node:path';
import { takeBuiltins } from './builtins.mjs';

const require = createRequire(import.meta.url);
const folder = import.meta.dirname;

const segmenters = `import { makeSegmenter } from ${JSON.stringify(join(folder, 'segmenter.ts'))};\n`;

const segmenting = [
  'ink/build/line-update.js',
  'wrap-ansi/index.js',
  'slice-ansi/tokenize-ansi.js',
  '@alcalzone/ansi-tokenize/build/tokenize.js',
];

/** Places in libraries, what stands there, and what the bundle has instead. */
const changes = [
  ...segmenting.map((file) => ({
    file,
    from: 'new Intl.Segmenter(',
    to: 'makeSegmenter(',
    before: segmenters,
  })),
  // The layout's code lies in its own text; it needs no fetch to be read from there.
  {
    file: 'yoga-layout/dist/binaries/yoga-wasm-base64-esm.js',
    from: 'typeof fetch',
    to: 'typeof undefined',
    before: '',
  },
];

const loaders = { '.js': 'js', '.mjs': 'js', '.ts': 'ts', '.tsx': 'tsx' };

export function lean() {
  const open = new Set(changes.map(({ file }) => file));
  return {
    name: 'lean',
    setup(build) {
      build.onResolve({ filter: /^string-width$/ }, ({ path }) => ({ path, namespace: 'lean' }));
      build.onLoad({ filter: /.*/, namespace: 'lean' }, ({ path }) => ({
        resolveDir: folder,
        contents: `import { widthBy } from './string-width.ts';
          export default widthBy(() => require(${JSON.stringify(require.resolve(path))}).default);`,
      }));
      build.onLoad({ filter: /\.(m?js|tsx?)$/ }, ({ path }) => {
        const text = readFileSync(path, 'utf8');
        const change = changeOf(path);
        const changed = change === undefined ? text : text.replaceAll(change.from, change.to);
        if (changed !== text) open.delete(change.file);
        return {
          contents: takeBuiltins(changed === text ? text : change.before + changed),
          loader: loaders[extname(path)],
        };
      });
      // A newer library may not do it any more: then the change here goes as well.
      build.onEnd(() => ({
        errors: [...open].map((file) => ({
          text: `Nothing of ${file} was made lean: see .scripts/lean/plugin.mjs`,
        })),
      }));
    },
  };
}

const changeOf = (path) =>
  changes.find(({ file }) => path.replaceAll('\\', '/').endsWith(`/node_modules/${file}`));
