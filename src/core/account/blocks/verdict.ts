import { percent } from '../../reason/history/wording.ts';
import { curedBy } from '../../reason/history/cured.ts';
import { fromLegs, type Repaired, type Story } from '../../session/story.ts';
import { lookAt } from '../../tree/looked.ts';
import { unlisted } from '../../tree/model.ts';
import { heading, paragraph, type Block } from '../block.ts';
import { failedRepairs } from './ledger.ts';
import { chanceBefore } from '../clauses/repairs.ts';
import type { AccountContext } from '../context.ts';
import { causeName, causeThing, asClause, joined, sentence } from '../words/wording.ts';

/** A suspect this likely beside the named cause was not ruled out. */
const stillOpen = 0.05;
const mostOpen = 3;

/** What it was, where, how sure that was, and what had not been ruled out. */
export function verdictBlocks(context: AccountContext): readonly Block[] {
  const { story } = context;
  const inOrder = [...story.condemned, ...story.repairs].toSorted((one, two) => one.n - two.n);
  const named = [...new Set(inOrder.map(({ cause }) => cause))];
  const head = heading('What it was');
  if (named.length === 0) return [head, paragraph(notFound(context))];
  return [head, ...named.map((cause) => paragraph(causeParagraph(context, cause)))];
}

function causeParagraph(context: AccountContext, cause: string): string {
  const { story } = context;
  const n =
    story.condemned.find((one) => one.cause === cause)?.n ??
    story.repairs.find((one) => one.cause === cause)?.n ??
    0;
  const chance = chanceBefore(context, n, cause);
  const stood = chance === undefined ? '' : ` at ${percent(chance)}`;
  if (isDenied(context, cause))
    return sentence(
      `It was not this: ${causeThing(story, cause)}. It was named${stood}; then ${context.who} looked at it, and it was not that`,
    );
  if (isFailed(context, cause))
    return sentence(
      `It was not this: ${causeThing(story, cause)}. It was mended${stood}, and the complaint stayed`,
    );
  return foundParagraph(context, cause, { n, chance });
}

/** A cause as it was found: where, how sure that was, and what was not ruled out beside it. */
function foundParagraph(
  context: AccountContext,
  cause: string,
  { n, chance }: { readonly n: number; readonly chance: number | undefined },
): string {
  const { story } = context;
  const where = fromLegs(story, ({ tree }) => tree.causes[cause]?.where);
  const place = where === undefined ? '' : `; where: ${asClause(where)}`;
  const others = openBeside(context, n, cause).slice(0, mostOpen);
  const sure =
    chance === undefined ? '' : ` By all that had been found it then stood at ${percent(chance)}.`;
  const open =
    others.length === 0
      ? ' No other suspect was left above 5 %.'
      : ` Not ruled out beside it: ${joined(others)}.`;
  const one = isOneOfSeveral(context, cause)
    ? ' It was there and was mended, and it was not the only one: the complaint stayed after it.'
    : '';
  return `${sentence(`${causeName(story, cause).replace(/\.$/, '')}${place}`)}${sure}${chance === undefined ? '' : open}${one}${outcome(context, cause)}`;
}

/** What the repair of it came to. */
function outcome({ story }: AccountContext, cause: string): string {
  const repair = story.repairs.findLast((one) => one.cause === cause);
  if (repair === undefined) return ' It was not repaired in this session.';
  if (proofAfter(story, repair) === undefined)
    return ' The repair was not put to the proof by itself.';
  return '';
}

/** Named, looked at after that, and not mended: it was not that. */
const isDenied = ({ story }: AccountContext, cause: string): boolean => {
  const named = story.condemned.findLast((one) => one.cause === cause)?.n ?? Infinity;
  const looked = story.findings.some(({ n, check }) => n > named && check === lookAt(cause));
  return looked && !story.repairs.some((one) => one.cause === cause);
};

const isFailed = ({ story }: AccountContext, cause: string): boolean =>
  failedRepairs(story).some((one) => one.cause === cause);

/** A real fault that was mended, and the complaint stayed: its own reading came right. */
const isOneOfSeveral = ({ story }: AccountContext, cause: string): boolean =>
  story.repairs.some(
    (repair) =>
      repair.cause === cause &&
      proofAfter(story, repair)?.good === false &&
      curedBy(story, repair).length > 0,
  );

/** The complaint's own test after a repair and before the next one. */
function proofAfter(story: Story, { n: since }: Repaired) {
  const next = story.repairs.find(({ n }) => n > since)?.n ?? Infinity;
  return story.proofs.findLast(({ n }) => n > since && n < next);
}

function openBeside(context: AccountContext, n: number, cause: string): readonly string[] {
  const last = context.history.findLast((step) => step.n < n)?.after ?? new Map<string, number>();
  return [...last]
    .filter(([id, chance]) => id !== cause && chance >= stillOpen)
    .toSorted(([, one], [, other]) => other - one)
    .map(([id, chance]) => `${nameOf(context, id)} (${percent(chance)})`);
}

const nameOf = ({ story }: AccountContext, id: string): string =>
  id === unlisted ? 'something not on the list' : causeThing(story, id);

function notFound(context: AccountContext): string {
  const open = openBeside(context, Infinity, '').slice(0, 5);
  return open.length === 0
    ? 'No cause was named.'
    : `No cause was named. When the work ended the suspects were: ${joined(open)}.`;
}
