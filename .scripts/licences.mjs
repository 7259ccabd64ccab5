// The licences of what the bundle holds, in one text: who installs the program gets them with it.
import { readFileSync, readdirSync } from 'node:fs';
import { join, resolve } from 'node:path';

/** The folder of the package that a file of the bundle comes from, below node_modules. */
function packageOf(input) {
  const at = input.lastIndexOf('node_modules/');
  if (at < 0) return undefined;
  const [first, second] = input.slice(at + 'node_modules/'.length).split('/');
  const name = first.startsWith('@') ? `${first}/${second}` : first;
  return input.slice(0, at) + `node_modules/${name}`;
}

/** Takes the inputs of the bundle; throws where a package comes without the text of its licence. */
export function licencesOf(inputs, root) {
  const folders = [...new Set(inputs.flatMap((input) => packageOf(input) ?? []))];
  const parts = folders.map((folder) => {
    const path = resolve(root, folder);
    const held = JSON.parse(readFileSync(join(path, 'package.json'), 'utf8'));
    return `${held.name} ${held.version} (${held.license})\n\n${textIn(path, held, root)}\n`;
  });
  const rule = `\n${'-'.repeat(78)}\n\n`;
  return `What the program holds by other hands, each under its own licence.\n${rule}${[...new Set(parts)].toSorted().join(rule)}`;
}

function textIn(path, { name, license, author }, root) {
  const names = readdirSync(path);
  const file = names.find((one) => /^licen[cs]e/i.test(one));
  if (file !== undefined)
    return readFileSync(join(path, file), 'utf8').replaceAll('\r\n', '\n').trim();
  const readme = names.find((one) => /^readme/i.test(one));
  const text = readme === undefined ? '' : readFileSync(join(path, readme), 'utf8');
  const at = text.search(/^#+ *licen[cs]e\b/im);
  if (at >= 0) return text.slice(at).trim();
  if (license !== 'MIT')
    throw new Error(`${name} comes without the text of its licence (${license})`);
  // Ours is the same licence: its words stand for one that a package names and leaves out.
  const words = readFileSync(join(root, 'LICENSE'), 'utf8');
  const by = typeof author === 'string' ? author : (author?.name ?? 'its authors');
  return `The package names its licence without the text. By ${by}.\n\n${words.slice(words.indexOf('Permission')).trim()}`;
}
