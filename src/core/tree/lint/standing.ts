import type { Tell } from '../../problem.ts';
import type { CheckFeed, Feed } from '../feed-model.ts';
import { gatesOf } from '../way/gates.ts';
import type { Check, Standing, Tree } from '../model.ts';
import { sentencesTold } from './touching.ts';

/** Standings in which a check cannot be done, or that its own steps contradict. */
export function lintStanding(tree: Tree, tell: Tell): void {
  const isGuarded = tree.safeguards?.some(({ before }) => before.engine !== undefined) === true;
  for (const [id, check] of Object.entries(tree.checks)) {
    lintReading(tree, check, `checks.${id}`, tell);
    lintSteps(check, `checks.${id}.how[0]`, tell);
    if (isGuarded) lintUnguarded(check, `checks.${id}`, tell);
  }
  lintSafeguards(tree, tell);
}

/** A reading on the feed path that this standing leaves at nothing, whatever is wrong. */
function lintReading(tree: Tree, { feed, standing }: Check, path: string, tell: Tell): void {
  if (feed === undefined || tree.feed === undefined) return;
  const { battery, key } = standing;
  if (battery === 'disconnected' && feed.reads === 'volts' && !isAtPosts(tree.feed, feed))
    tell(
      dead(`${path}.standing.battery`, battery, 'With the battery off there are no volts here.'),
    );
  if (battery === 'connected' && feed.reads === 'ohms')
    tell(dead(`${path}.standing.battery`, battery, 'Ohms are read with the ground lead off.'));
  const turned = feed.load.find((one) => keyed.test(one));
  if (turned !== undefined && key === 'off')
    tell(dead(`${path}.standing.key`, key, `Its "load" has "${turned}", which the key closes.`));
}

/** A battery has its volts between its posts whatever is taken off. */
const isAtPosts = ({ battery }: Feed, { station, against }: CheckFeed): boolean =>
  station === battery.positive && (against === undefined || against === battery.negative);

const keyed = /^(key|ign|ignition-switch|acc)(-|$)/;

const dead = (path: string, value: string, message: string) => ({
  code: 'standing-against-reading',
  path,
  value,
  message,
  mend: 'Mend the standing, or what the check reads.',
});

/**
 * Words of a first step that say what is on, and the standings in which it is off. "Engine off" where
 * the standing has it running contradicts nothing: the step sets up what the standing comes to.
 */
const said: readonly { readonly words: RegExp; readonly against: (at: Standing) => boolean }[] = [
  { words: /\b(key|ignition) on\b/i, against: ({ key }) => key === 'off' },
  {
    words: /^(engine|it) (running|idling|at idle|at a fast idle)\b|^(idling|at idle)\b/i,
    against: ({ engine }) => engine === 'off' || engine === 'cranking',
  },
  { words: /\bbattery connected\b/i, against: ({ battery }) => battery === 'disconnected' },
];

function lintSteps({ how: [first], standing }: Check, path: string, tell: Tell): void {
  if (first === undefined) return;
  for (const { words, against } of said) {
    const found = words.exec(first);
    if (found !== null && against(standing))
      tell({
        code: 'standing-against-words',
        path,
        value: found[0],
        message: `The step says "${found[0]}", and the standing says otherwise (${shown(standing)}).`,
        mend: 'Mend the one that is wrong: cautions and safeguards go by the standing.',
      });
  }
}

const shown = (standing: Standing): string =>
  Object.entries(standing)
    .map(([what, how]) => `${what} ${how}`)
    .join(', ');

/** Words by which a step cranks or runs an engine. */
const runs =
  /\b(crank (it|the engine|\d+ s|for)|(start|run|rev|idle) (it|the engine)|let it (idle|run)|press the starter|engine running|(at|hold|bring it to) \d{3,4} rpm)\b/i;

/** A step that runs the engine while its standing says off: no safeguard comes before it. */
function lintUnguarded({ how, standing: { engine } }: Check, path: string, tell: Tell): void {
  if (engine !== undefined && engine !== 'off') return;
  for (const [index, step] of how.entries()) {
    const told = sentencesTold(step).find((sentence) => runs.test(sentence));
    if (told !== undefined)
      tell({
        code: 'runs-unguarded',
        path: `${path}.how[${index}]`,
        value: told,
        message: 'This runs the engine, and the standing says off: no safeguard comes before it.',
        mend: 'Give "standing" the engine as the step has it, or leave the engine off.',
      });
  }
}

/** A safeguard's own check that must be done in the very standing that the safeguard forbids before. */
function lintSafeguards(tree: Tree, tell: Tell): void {
  for (const [index, { check, before }] of (tree.safeguards ?? []).entries()) {
    const one = tree.checks[check];
    if (one === undefined) continue;
    for (const cause of before.repair ?? [])
      lintBehindItself(tree, one, cause, { path: `safeguards[${index}].check`, tell });
    const alone = { ...tree, safeguards: tree.safeguards?.slice(index, index + 1) };
    const twin = { ...alone, checks: { ...tree.checks, [`${check}.`]: one } };
    if (gatesOf(twin, `${check}.`).some((gate) => gate.kind === 'safeguard'))
      tell({
        code: 'safeguard-in-danger',
        path: `safeguards[${index}].check`,
        value: check,
        message:
          'The check of this safeguard is itself done in the standing that it must come before.',
        mend: 'Name a check that is done with everything still off.',
      });
  }
}

/**
 * A check that must come before a repair and waits itself for what only that repair brings about: it
 * is never made, and the cause is never mended.
 */
function lintBehindItself(
  { checks }: Tree,
  { after = {} }: Check,
  cause: string,
  { path, tell }: { readonly path: string; readonly tell: Tell },
): void {
  for (const [id, results] of Object.entries(after)) {
    const row = checks[id]?.points[cause] ?? [];
    const open = row.reduce(
      (all, share, place) =>
        results.includes(checks[id]?.results[place]?.id ?? '') ? all + share : all,
      0,
    );
    if (row.length > 0 && open < 0.5)
      tell({
        code: 'safeguard-behind-itself',
        path,
        value: id,
        message: `The repair of "${cause}" waits for this check, which waits for "${id}"; with that cause "${id}" seldom shows what opens it.`,
        mend: 'Name a check that can be made while the cause is still there.',
      });
  }
}
