import { Box } from 'ink';
import { askedCheck, namedCause, type Mode } from '../app/asking.ts';
import { bindings } from '../app/bindings.ts';
import { currentLeg, type Leg, type Story } from '../core/session/story.ts';
import type { Cause, Check } from '../core/tree/model.ts';
import { fullCaution } from './cautions.tsx';
import { Line } from './parts.tsx';
import { healthyWords, standingWords } from './wording.ts';

/** A page to read, from one of its lines on. */
export function PageBody({
  lines,
  from,
}: {
  readonly lines: readonly string[];
  readonly from: number;
}) {
  const start = Math.min(from, Math.max(0, lines.length - 1));
  return (
    <Box paddingX={1} flexDirection="column" flexShrink={0}>
      {lines.slice(start).map((line) => (
        <Box key={line} flexShrink={0}>
          <Line wrap="fold">{line}</Line>
        </Box>
      ))}
    </Box>
  );
}

/** The keys of a mode, out of the keymap itself. */
export const keyLines = (mode: Mode): readonly string[] =>
  bindings
    .filter(({ modes }) => modes === 'all' || modes.includes(mode))
    .map(({ keys, about }) => `${keys.map(keyName).join(' ').padEnd(17)} ${about}`);

const keyNames: Readonly<Record<string, string>> = {
  'C-c': 'Ctrl+C',
  'C-l': 'Ctrl+L',
  ' ': 'space',
  digit: '1-9',
  line: '1-9 a-z',
  typed: 'any',
  back: 'backspace',
};
const keyName = (key: string): string => keyNames[key] ?? key;

/** The check or cause on the walk with everything the tree says of it. */
export function fullLines(story: Story): readonly string[] {
  const leg = currentLeg(story);
  const asking = askedCheck(story, undefined);
  if (asking !== undefined) return checkLines(asking.check, leg);
  const named = namedCause(story);
  return named === undefined
    ? ['There is nothing more to say here.']
    : causeLines(named.cause, leg);
}

const part = (name: string, text: string | undefined): readonly string[] =>
  text === undefined || text === '' ? [] : [`${name}: ${text}`];

const toolNames = (ids: readonly string[], { shop }: Leg): string =>
  ids.map((id) => shop.tools[id]?.name ?? id).join('; ');

function checkLines(check: Check, leg: Leg): readonly string[] {
  return [
    check.ask,
    ...check.cautions.map((id) => `! ${fullCaution(leg, id)}`),
    ...part('Standing', standingWords(check.standing).join('; ')),
    ...check.how.map((step, index) => `${index + 1}. ${step}`),
    ...part('Healthy', healthyWords(check)),
    ...part('Tools', toolNames(check.tools, leg)),
    ...part('Source', check.source),
  ];
}

function causeLines({ name, where, shows, repair }: Cause, leg: Leg): readonly string[] {
  return [
    name,
    ...repair.cautions.map((id) => `! ${fullCaution(leg, id)}`),
    ...part('Where', where),
    ...part('Shows', shows),
    ...part('Standing', standingWords(repair.standing).join('; ')),
    ...repair.do.map((step, index) => `${index + 1}. ${step}`),
    ...part('Parts', repair.parts.join('; ')),
    ...part('Tools', toolNames(repair.tools, leg)),
  ];
}
