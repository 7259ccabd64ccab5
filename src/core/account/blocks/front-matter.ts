import { dateOf } from '../../session/clock.ts';
import { firstLeg } from '../../session/story.ts';
import { isOwn } from '../../tree/own/bare.ts';
import { causeName } from '../words/wording.ts';
import { cleanLine } from '../../text.ts';
import { accountTitle, type AccountContext } from '../context.ts';

/** A double-quoted YAML scalar: JSON's strings are that, since YAML 1.2 takes in JSON (section 1.3). */
const quoted = (text: string): string => JSON.stringify(cleanLine(text));

/** What programs that gather accounts want to know, as YAML before the account. */
export function frontMatter(context: AccountContext): string {
  const { story } = context;
  const repaired = story.repairs.at(-1)?.n ?? 0;
  const proven = story.proofs.some(({ good, n }) => good && n > repaired);
  const { tree } = firstLeg(story);
  // What was named in own words has ids made of them, in which no name can be hidden.
  const named = (cause: string): string => (isOwn(tree) ? causeName(story, cause) : cause);
  const lines = [
    `title: ${quoted(accountTitle(context))}`,
    `date: ${quoted(dateOf(story.header.opened))}`,
    `complaint: ${quoted(isOwn(tree) ? tree.title : tree.id)}`,
    `causes: [${[...new Set(story.repairs.map(({ cause }) => named(cause)))].map(quoted).join(', ')}]`,
    `minutes: ${Math.round(story.minutes)}`,
    `closed: ${quoted(story.closed?.as ?? 'open')}`,
    `proven: ${proven}`,
  ];
  return `---\n${lines.join('\n')}\n---\n\n`;
}
