// Node's own modules, taken as they are and only by the names that are used. An import statement reads every
// name that such a module has to give, and some of those load half of Node when they are read.
import { isBuiltin } from 'node:module';

/** `require` for what the bundle holds of CommonJS: it asks for Node's own modules alone. */
export const banner = 'const require = (name) => globalThis.process.getBuiltinModule(name);';

const statement =
  /^import (?!type\b)(?:(?<whole>\w+|\* as \w+),? ?)?(?:\{(?<named>[^}]*)\} ?)?from ?(?<quote>['"])(?<from>[\w:/]+)\k<quote>;?$/gm;

/** The text of a module with its imports of Node's own modules put so. */
export const takeBuiltins = (text) =>
  text.replaceAll(statement, (all, ...rest) => {
    const { whole, named, from } = rest.at(-1);
    if (!isBuiltin(from)) return all;
    const module = `globalThis.process.getBuiltinModule('${from}')`;
    return [
      whole && `const ${whole.replace('* as ', '')} = ${module};`,
      named && `const {${valuesOf(named)}} = ${module};`,
    ]
      .filter(Boolean)
      .join(' ');
  });

/** `a, type B, c as d` as it is written where a value is taken apart. */
const valuesOf = (named) =>
  named
    .split(',')
    .map((one) => one.trim())
    .filter((one) => one !== '' && !one.startsWith('type '))
    .map((one) => one.replace(/ as /, ': '))
    .join(', ');
