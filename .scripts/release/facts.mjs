// What a release is held to before anything is run: the state of the checkout, its version and its tags.
import { spawnSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';

/** What git says of a folder, without its last newline. */
function git(folder, ...args) {
  const { status, stdout, stderr } = spawnSync('git', args, { cwd: folder, encoding: 'utf8' });
  if (status !== 0) throw new Error(`git ${args.join(' ')}: ${stderr}`);
  return stdout.trimEnd();
}

export function factsOf(folder) {
  const { version } = JSON.parse(readFileSync(join(folder, 'package.json'), 'utf8'));
  const lock = JSON.parse(readFileSync(join(folder, 'package-lock.json'), 'utf8'));
  return {
    version,
    locked: lock.version,
    heading: headingOf(readFileSync(join(folder, 'CHANGELOG.md'), 'utf8')),
    changed: git(folder, 'status', '--porcelain').split('\n').filter(Boolean),
    tags: git(folder, 'tag', '--list').split('\n').filter(Boolean),
    commit: git(folder, 'rev-parse', 'HEAD'),
  };
}

/** The words of the first release in a list of changes; nothing where it has none. */
export const headingOf = (changes) => /^## +(?<words>.+?) *$/m.exec(changes)?.groups.words;

export const tagOf = (version) => `v${version}`;

/** Why this is no release yet, each in a sentence; nothing where it may be one. */
export function refusals({ version, locked, heading, changed, tags }) {
  const told = [];
  if (changed.length > 0)
    told.push(
      `${changed.length} file${changed.length === 1 ? ' is' : 's are'} not committed: ${changed.map((line) => line.slice(3)).join(', ')}. A release is a commit.`,
    );
  // A heading may have the day behind the version.
  if (heading?.split(' ')[0] !== version)
    told.push(
      `CHANGELOG.md is headed "${heading ?? ''}", and package.json says ${version}. Both have the version that is released.`,
    );
  if (locked !== version)
    told.push(
      `package-lock.json says ${locked}, and package.json ${version}. "npm install" mends it.`,
    );
  if (tags.includes(tagOf(version)))
    told.push(`The tag ${tagOf(version)} is there already. A release that is out is not changed.`);
  return told;
}

/** What is left for a person to do. */
export const byHand = ({ version, commit }, tarball, isPrivate) =>
  [
    `git tag -a ${tagOf(version)} -m "Droplight ${version}" ${commit.slice(0, 12)}`,
    `git push origin ${tagOf(version)}`,
    ...(isPrivate ? ['take "private" out of package.json, which keeps npm from publishing'] : []),
    `npm publish ${tarball}`,
    'head CHANGELOG.md with "## Unreleased" again',
  ].map((line, index) => `  ${index + 1}. ${line}`);
