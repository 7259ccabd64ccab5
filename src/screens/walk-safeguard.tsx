import type { Blocker, DueOnScreen } from '../app/walk/question.ts';
import { seenWords } from '../core/session/safeguard.ts';
import { currentLeg, type Hold, type Leg, type Story } from '../core/session/story.ts';
import { Asks, Ends, Head, Indented } from './parts.tsx';

type SafeguardProps = {
  readonly due: DueOnScreen;
  readonly holds: readonly [Hold, ...Hold[]];
};

/** The check that must come before the step that was led to or picked, and why. */
export function SafeguardBody({ due, holds }: SafeguardProps) {
  const { story, asked, cause } = due;
  const check = currentLeg(story).tree.checks[holds[0].check];
  const step = asked?.check.ask ?? cause?.cause.name ?? '';
  return (
    <>
      <Head>
        <Ends
          left={`FIRST: ${check?.ask ?? holds[0].check}`}
          right={check === undefined ? '' : `${check.kind} · ${check.minutes} min`}
          as="title"
        />
      </Head>
      <Reasons story={story} blocker={{ kind: 'safeguard', holds }} titled />
      <Indented mark="Then:">{step}</Indented>
      <Asks>y: make it now. g: go past it, with a word of your own.</Asks>
    </>
  );
}

/** Why a check comes first, where the tree makes it a safeguard: what it says of going on without. */
export const firstBecause = ({ tree }: Leg, id: string): readonly string[] =>
  (tree.safeguards ?? [])
    .filter(({ check }) => check === id)
    .map(({ else: otherwise }) => `This comes first. ${otherwise}`);

type ReasonsProps = {
  readonly story: Story;
  readonly blocker: Blocker;
  /** The first check stands in the title already. */
  readonly titled?: boolean;
};

const askOf = (story: Story, { check }: Hold): string =>
  currentLeg(story).tree.checks[check]?.ask ?? check;

/** What each shut safeguard says of going on, whole. */
export const Reasons = ({ story, blocker, titled = false }: ReasonsProps) =>
  blocker.kind !== 'safeguard'
    ? null
    : blocker.holds.map((hold, index) => (
        <Indented key={hold.check} mark="!" as="caution">
          {`${titled && index === 0 ? 'It' : `"${askOf(story, hold)}"`} ${seenWords(hold, 'now')}. ${hold.otherwise}`}
        </Indented>
      ));
