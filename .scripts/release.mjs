// npm run release: everything a release is held to, from a clean clone of the commit; then it says what is
// left to be done by hand. It tags nothing and publishes nothing.
import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, readdirSync, symlinkSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { byHand, factsOf, refusals } from './release/facts.mjs';
import { tryOut } from './release/try-out.mjs';
import { root } from './setup.mjs';

const say = (line) => process.stdout.write(`${line}\n`);

function stop(lines) {
  for (const line of lines) process.stderr.write(`release: ${line}\n`);
  process.exit(1);
}

const facts = factsOf(root);
const against = refusals(facts);
if (against.length > 0) stop(against);

/** The npm script that a release is held to. Another is for trying this script out, and makes no release. */
const checked = process.env.RELEASE_CHECK ?? 'check';
const place = mkdtempSync(join(tmpdir(), 'droplight-release-'));
const clone = join(place, 'clone');

function run(what, command, args, cwd = clone) {
  say(`release: ${what}`);
  const { status } = spawnSync(command, args, {
    cwd,
    stdio: 'inherit',
    shell: process.platform === 'win32',
  });
  if (status !== 0) stop([`${what} failed`]);
}

run('clone the commit', 'git', ['clone', '--quiet', '--no-hardlinks', root, clone], place);
run('take the commit', 'git', ['checkout', '--quiet', '--detach', facts.commit]);
if (process.env.RELEASE_MODULES)
  // Packages that are here already: for a machine without a network.
  symlinkSync(process.env.RELEASE_MODULES, join(clone, 'node_modules'));
else run('install what it names', 'npm', ['ci', '--include=dev', '--no-audit', '--no-fund']);
run(`npm run ${checked}`, 'npm', ['run', checked]);
run('build', 'npm', ['run', 'build']);
run('pack', 'npm', ['pack', '--ignore-scripts', '--pack-destination', place]);
const tarball = readdirSync(place).find((name) => name.endsWith('.tgz'));
if (tarball === undefined) stop(['npm packed nothing']);
const publint = join(root, 'node_modules', 'publint', 'src', 'cli.js');
run('look at the package', process.execPath, [publint, 'run', join(place, tarball), '--strict']);
say('release: install it without a network, and do a whole job with it');
say(`  ${tryOut(place, join(place, tarball))}`);

const { private: isPrivate } = JSON.parse(readFileSync(join(root, 'package.json'), 'utf8'));
say(`\nDroplight ${facts.version} of ${facts.commit.slice(0, 12)} lies in ${join(place, tarball)}`);
if (checked !== 'check') stop([`only "${checked}" was run, not "check": this is no release`]);
say('Nothing is tagged and nothing is published. By hand, in this order:');
for (const line of byHand(facts, join(place, tarball), isPrivate)) say(line);
