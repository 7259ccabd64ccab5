import { at } from '../at.ts';
import { fillTree } from '../feed/fill.ts';
import { freshInput } from '../reason/belief/evidence.ts';
import { makeModel, type Model } from '../reason/belief/model.ts';
import { believe } from '../reason/belief/posterior.ts';
import { count } from '../text.ts';
import { unlisted, type Cause, type Check, type Tree } from '../tree/model.ts';
import type { Shop } from '../tree/shop.ts';
import { hidingSentence, leadSentences, safeguardWords, setUpSentences } from './checks.ts';
import { moveSentences } from './moves.ts';
import { heading, list, say, type Part } from './part.ts';
import { rowSentences } from './rows.ts';
import { walkedAloud } from './walked.ts';
import { andWords, causeWords, ofHundred, sentence, whenWords } from './words.ts';

/**
 * A tree read back in sentences, so that somebody who knows the trade hears what eyes miss in
 * numbers: who has what, what each check shows with each cause, what it moves, what hides what, and
 * each cause as a vehicle walked through the tree's own way.
 */
export function tellTree(tree: Tree, shop: Shop): readonly Part[] {
  const filled = fillTree(tree, {});
  const model = makeModel(filled);
  return [
    heading(1, tree.title),
    say(`${tree.complaint.say} ${testWords(tree)}`),
    ...heardWords(tree),
    say('Read it aloud, and stop at every sentence that you would not sign.'),
    heading(2, 'Who has it'),
    ...oddsParts(filled, model),
    ...safeguardParts(filled),
    heading(2, 'Each cause as a vehicle, walked'),
    say(
      'Each has this cause alone and shows the complaint; at every step it showed what most of its kind show.',
    ),
    ...list(Object.keys(tree.causes).map((cause) => walkedAloud(filled, cause))),
    heading(2, 'Each check'),
    ...Object.entries(filled.checks).flatMap(([id, check]) =>
      checkParts({ tree: filled, model, shop }, id, check),
    ),
    heading(2, 'Each repair'),
    ...list(Object.keys(tree.causes).map((cause) => repairWords(tree, shop, cause))),
    say('Signed by a second mechanic: ____________________   Date: ____________'),
  ];
}

function testWords({ complaint, checks }: Tree): string {
  const test = checks[complaint.confirm];
  const healthy = test?.results[0]?.label ?? '';
  return `Its test: "${test?.ask ?? ''}" A repair is proved when this shows "${healthy}"${
    complaint.tries > 1 ? `, ${complaint.tries} times in a row` : ''
  }.`;
}

/** The odds as typed, of a hundred, and what the screen shows at the start where several can be there. */
function oddsParts(tree: Tree, model: Model): readonly Part[] {
  const belief = believe(freshInput(model));
  const total = model.causes.reduce((all, { odds }) => all + odds, 0);
  const items = model.causes
    .map(({ id, odds }, index) => ({ id, share: odds / total, index }))
    .toSorted((one, other) => other.share - one.share)
    .map(({ id, share, index }) => {
      const start = belief.kind === 'good' ? at(belief.value.chances, index) : share;
      const when = tree.causes[id]?.when;
      const only = when === undefined ? '' : `, only where ${whenWords(when)}`;
      return `${ofHundred(share)} of 100 have ${causeWords(tree, id)}${only}; the screen begins with ${ofHundred(start)} %.`;
    });
  return [
    say(
      `Of 100 vehicles with this complaint, and ${ofHundred(tree.alsoLikely)} of them with a second cause beside the first, so that the screen shows a little more:`,
    ),
    ...list(items),
  ];
}

/** What must be known before anything is cranked, run, powered or mended. */
function safeguardParts(tree: Tree): readonly Part[] {
  const { safeguards = [] } = tree;
  return safeguards.length === 0
    ? []
    : [heading(2, 'What comes first'), ...list(safeguards.map((one) => safeguardWords(tree, one)))];
}

type Around = { readonly tree: Tree; readonly model: Model; readonly shop: Shop };

function checkParts({ tree, model, shop }: Around, id: string, check: Check): readonly Part[] {
  return [
    heading(3, check.ask),
    say(setUpSentences(tree, shop, check).join(' ')),
    ...list(check.how),
    ...list(rowSentences(tree, id, check)),
    ...hidingSentence(check).map(say),
    ...list(moveSentences(tree, model, id)),
    ...list(leadSentences(tree, check)),
  ];
}

function repairWords(tree: Tree, shop: Shop, id: string): string {
  const cause = tree.causes[id];
  if (cause === undefined || id === unlisted) return '';
  const { repair } = cause;
  const cautions = repair.cautions.map((one) => shop.cautions[one]?.hazard ?? one);
  const words = [
    `${sentence(causeWords(tree, id))}${cause.where === undefined ? '' : ` (${cause.where})`}, ${count(repair.minutes, 'minute')}: ${repair.do.join(' ')}`,
    ...(cause.shows === undefined ? [] : [`It shows by: ${cause.shows}`]),
    ...(cautions.length > 0 ? [`Cautions: ${andWords(cautions)}.`] : []),
    ...(repair.parts.length > 0 ? [`Parts: ${andWords(repair.parts)}.`] : []),
    ...reasonWords(tree, cause),
    ...(cause.triage === undefined ? [] : [`Named, it is handed to inspection: ${cause.triage}`]),
    ...(cause.tree === undefined ? [] : [`Named, the job goes on with the tree ${cause.tree}.`]),
    ...(repair.then.length > 0
      ? [
          `Afterwards: ${andWords(repair.then.map((check) => `"${tree.checks[check]?.ask ?? check}"`))}.`,
        ]
      : []),
  ];
  return words.join(' ');
}

const reasonWords = (tree: Tree, { because = [] }: Cause): readonly string[] =>
  because.length === 0
    ? []
    : [
        `It may have come by ${andWords(because.map((one) => causeWords(tree, one)))}: look there too.`,
      ];

/** What else owners are taken to say, where the tree has that: the complaint is found by it. */
const heardWords = ({ complaint: { heard = [] } }: Tree): readonly Part[] =>
  heard.length === 0 ? [] : [say(`Owners also say: ${heard.join('; ')}.`)];
