// The bundler makes a file of every set of modules that the same commands share: dozens of small ones, each
// looked up, read and linked by itself. Those on the way to the first frame become one.
import { build } from 'esbuild';
import { readFileSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { basename, join } from 'node:path';

/** Ways that are walked often: what those of a line share is gathered in a file of this name. */
const ways = {
  'shared.js': ['main', 'commands/table', 'commands/trees/trees', 'commands/trees/list'],
  'shown.js': ['commands/screens'],
};

/** More than this together is no small thing, and waits in its own file until it is asked for, in bytes. */
const most = 100_000;

export async function gather(outdir, { outputs }) {
  const files = new Map(Object.entries(outputs).map(([path, made]) => [basename(path), made]));
  const closure = closures(files);
  const size = (file) => [...closure(file)].reduce((sum, one) => sum + files.get(one).bytes, 0);
  const gathered = new Set();
  for (const [name, sources] of Object.entries(ways)) {
    const starts = [...files.keys()].filter((file) =>
      sources.some((one) => files.get(file).entryPoint?.replace(/\.\w+$/, '') === `src/${one}`),
    );
    const met = new Set(starts.flatMap((file) => [...closure(file)]));
    const small = [...met].filter(
      (file) =>
        files.get(file).entryPoint === undefined && !gathered.has(file) && size(file) < most,
    );
    if (small.length < 2) continue;
    for (const file of small) gathered.add(file);
    writeFileSync(join(outdir, name), await oneOf(outdir, small, files));
    for (const file of small) rmSync(join(outdir, file));
    for (const file of readdirSync(outdir))
      if (file.endsWith('.js') && file !== name) pointTo(name, join(outdir, file), small);
  }
}

/** The files that one needs before it runs, itself among them. */
function closures(files) {
  return function closure(file, met = new Set()) {
    if (met.has(file)) return met;
    met.add(file);
    for (const { path, kind, external } of files.get(file).imports)
      if (kind === 'import-statement' && !external) closure(basename(path), met);
    return met;
  };
}

/** What one of these files gives, under a name that no other gives. */
const given = (small, file, one) => `s${small.indexOf(file)}_${one}`;

/** The text of one file that gives all that these give. */
async function oneOf(outdir, small, files) {
  const lines = small.map((file) => {
    const names = files.get(file).exports.map((one) => `${one} as ${given(small, file, one)}`);
    return `export { ${names.join(', ')} } from './${file}';`;
  });
  const { outputFiles } = await build({
    stdin: { contents: lines.join('\n'), resolveDir: outdir },
    bundle: true,
    write: false,
    format: 'esm',
    platform: 'node',
    target: 'node22',
    minify: true,
    plugins: [
      {
        name: 'rest',
        setup(built) {
          built.onResolve({ filter: /^\.\// }, ({ path }) =>
            small.includes(basename(path)) ? undefined : { path, external: true },
          );
        },
      },
    ],
    logLevel: 'warning',
  });
  return outputFiles[0].text;
}

function pointTo(name, path, small) {
  const text = readFileSync(path, 'utf8')
    .replaceAll(/import\{([^}]*)\}from"\.\/([^"]+)"/g, (whole, names, file) =>
      small.includes(file) ? `import{${renamed(names, file, small)}}from"./${name}"` : whole,
    )
    .replaceAll(/import"\.\/([^"]+)"/g, (whole, file) =>
      small.includes(file) ? `import"./${name}"` : whole,
    );
  const left = small.find((file) => text.includes(`"./${file}"`));
  if (left !== undefined) throw new Error(`${basename(path)} still asks for ${left}`);
  writeFileSync(path, text);
}

const renamed = (names, file, small) =>
  names
    .split(',')
    .map((one) => {
      const [from, to = from] = one.split(' as ');
      return `${given(small, file, from)} as ${to}`;
    })
    .join(',');
