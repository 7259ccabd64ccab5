import { costsOf } from '../../session/costs/costs.ts';
import { moneyWords } from '../../session/costs/words.ts';
import { dateOf } from '../../session/clock.ts';
import type { Story } from '../../session/story.ts';
import { mendedCauses, outcomeOf, partsOf, type Outcome, type Part } from '../opening/part.ts';
import { partNames, toolsOf } from '../opening/totals.ts';
import { causeIn } from '../words/wording.ts';
import { cleanLine } from '../../text.ts';
import { accountTitle, type AccountContext } from '../context.ts';

/** A double-quoted YAML scalar: JSON's strings are that, since YAML 1.2 takes in JSON (section 1.3). */
const quoted = (text: string): string => JSON.stringify(cleanLine(text));
const list = (texts: readonly string[]): string =>
  `[${[...new Set(texts)].map(quoted).join(', ')}]`;

/** What programs that gather accounts want to know, as YAML before the account. */
export function frontMatter(context: AccountContext): string {
  const { story } = context;
  const parts = partsOf(story);
  const proven = parts.filter((part) => outcomeOf(story, part) === 'proven');
  const lines = [
    `title: ${quoted(accountTitle(context))}`,
    `date: ${quoted(dateOf(story.header.opened))}`,
    `vehicle: ${quoted(vehicleWords(context))}`,
    `complaint: ${list(parts.map(({ complaint }) => complaint.title))}`,
    `cause: ${list(proven.flatMap((part) => namesOf(story, part, causeOf(part))))}`,
    `tried: ${list(parts.flatMap((part) => namesOf(story, part, triedIn(part, proven.includes(part)))))}`,
    `proven: ${proven.length === parts.length}`,
    `status: ${quoted(statusOf(story, parts))}`,
    `parts: ${list(partNames(story))}`,
    `cost: ${quoted(moneyWords(costsOf(story).spent))}`,
    `minutes: ${Math.round(story.minutes)}`,
    `tools: ${list(toolsOf(story))}`,
  ];
  return `---\n${lines.join('\n')}\n---\n\n`;
}

/** What a repair that was proven mended; where several came before the one proof, the last of them. */
const causeOf = (part: Part): readonly string[] => mendedCauses(part);

/** What was mended and is not proven to have been it. */
const triedIn = ({ repairs, failed }: Part, proven: boolean): readonly string[] =>
  (proven ? failed : repairs).map(({ cause }) => cause);

const namesOf = (story: Story, { leg }: Part, causes: readonly string[]): readonly string[] =>
  causes.map((cause) => causeIn(story, cause, leg).replace(/^(the|an?) /, ''));

const words: Readonly<Record<Outcome, string>> = {
  proven: 'mended and proven',
  tried: 'mended, not proven',
  named: 'found, not mended',
  'went away': 'went away by itself',
  open: 'not found',
  inspection: 'for inspection',
};

function statusOf(story: Story, parts: readonly Part[]): string {
  const told = parts.map((part) => words[outcomeOf(story, part)]);
  const ended = {
    fixed: '',
    'handed-on': ', handed on',
    'given-up': ', given up',
    'not-reproduced': '',
    open: ', unfinished',
  }[story.closed?.as ?? 'open'];
  return `${[...new Set(told)].join('; ')}${ended}`;
}

/** A stranger is told the kind of vehicle, never its name. */
function vehicleWords({ story: { header }, audience }: AccountContext): string {
  const { name, year, body, engine } = header.vehicle;
  return [audience === 'reader' ? undefined : name, year, body, engine]
    .filter((part) => part !== undefined)
    .join(', ');
}
