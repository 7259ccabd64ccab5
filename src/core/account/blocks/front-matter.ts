import { dateOf } from '../../session/clock.ts';
import { firstLeg } from '../../session/story.ts';
import { cleanLine } from '../../text.ts';
import { accountTitle, type AccountContext } from '../context.ts';

/** A double-quoted YAML scalar: JSON's strings are that, since YAML 1.2 takes in JSON (section 1.3). */
const quoted = (text: string): string => JSON.stringify(cleanLine(text));

/** What programs that gather accounts want to know, as YAML before the account. */
export function frontMatter(context: AccountContext): string {
  const { story } = context;
  const repaired = story.repairs.at(-1)?.n ?? 0;
  const proven = story.proofs.some(({ good, n }) => good && n > repaired);
  const lines = [
    `title: ${quoted(accountTitle(context))}`,
    `date: ${quoted(dateOf(story.header.opened))}`,
    `complaint: ${quoted(firstLeg(story).tree.id)}`,
    `causes: [${[...new Set(story.repairs.map(({ cause }) => cause))].map(quoted).join(', ')}]`,
    `minutes: ${Math.round(story.minutes)}`,
    `closed: ${quoted(story.closed?.as ?? 'open')}`,
    `proven: ${proven}`,
  ];
  return `---\n${lines.join('\n')}\n---\n\n`;
}
