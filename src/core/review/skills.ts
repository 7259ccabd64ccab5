import { apartNow } from '../session/apart/apart.ts';
import { fold, type Recorded } from '../session/fold.ts';
import { workerAt, type Proof, type Story } from '../session/story.ts';
import type { Standing } from '../tree/model.ts';
import { isGuess, type Decision } from './decision.ts';
import { doubtfulFindings, isRepeated } from './doubtful.ts';
import { baselineAsked, graveSteps } from './habits.ts';

/** So many times done out of so many times that it was called for. */
type Share = { readonly good: number; readonly of: number };

export const skillNames = [
  'baseline',
  'evidence',
  'one-change',
  'doubtful',
  'cautions',
  'proof',
  'put-back',
] as const;
export type Skill = (typeof skillNames)[number];

/** How one person worked in one job; what was not called for counts nothing of nothing. */
export type Skills = Readonly<Record<Skill, Share>> & {
  /** Minutes that the tree plans for the steps done, and what they took. */
  readonly minutes: { readonly planned: number; readonly taken: number };
};

const shareOf = <T>(all: readonly T[], isGood: (one: T) => boolean): Share => ({
  good: all.filter(isGood).length,
  of: all.length,
});

/** @param who whose share of the job it is; left out, all of it */
export function skillsOf(recorded: Recorded, decisions: readonly Decision[], who?: string): Skills {
  const story = fold(recorded.header, recorded.events);
  const isMine = ({ n }: { readonly n: number }): boolean =>
    who === undefined || workerAt(story, n) === who;
  const mine = decisions.filter(isMine);
  return {
    baseline: baselineShare(story, isMine),
    evidence: shareOf(
      mine.filter(({ step, chance }) => step.do === 'repair' && chance !== undefined),
      (one) => !isGuess(one),
    ),
    'one-change': shareOf(story.repairs.filter(isMine), ({ n }) => isProvedAlone(story, n)),
    doubtful: shareOf(doubtfulFindings(story).filter(isMine), (one) => isRepeated(story, one)),
    cautions: shareOf(graveSteps(story).filter(isMine), ({ unread }) => unread.length === 0),
    proof: proofShare(recorded, story, isMine),
    'put-back': putBackShare(story, isMine),
    minutes: minutesOf(mine),
  };
}

type Mine = (one: { readonly n: number }) => boolean;

/** Baseline readings are owed by whoever made the complaint show itself. */
function baselineShare(story: Story, isMine: Mine): Share {
  const first = story.findings[0];
  if (first === undefined || !isMine(first)) return { good: 0, of: 0 };
  return shareOf(baselineAsked(story), (id) => story.findings.some(({ check }) => check === id));
}

/** Whether the complaint's own test was made between a repair and the next one. */
function isProvedAlone({ repairs, proofs }: Story, n: number): boolean {
  const next = repairs.find((repair) => repair.n > n)?.n ?? Infinity;
  return proofs.some((proof) => proof.n > n && proof.n < next);
}

/** Proofs made as warm and with the engine as it was when the complaint showed; of those where that is on record. */
function proofShare(recorded: Recorded, story: Story, isMine: Mine): Share {
  const told = story.proofs
    .filter(isMine)
    .flatMap((proof) => sameConditions(recorded, story, proof) ?? []);
  return shareOf(told, (same) => same);
}

function sameConditions(recorded: Recorded, story: Story, proof: Proof): boolean | undefined {
  const shown = story.findings.find(
    ({ check, leg, proof: proves }) => check === proof.check && leg === proof.leg && !proves,
  );
  if (shown === undefined || shown.n > proof.n) return undefined;
  const standing = (until: number): Standing =>
    fold(
      recorded.header,
      recorded.events.filter(({ n }) => n <= until),
    ).standing;
  const [then, now] = [standing(shown.n), standing(proof.n)];
  if (then.heat !== undefined && now.heat !== undefined && then.heat !== now.heat) return false;
  return then.engine === now.engine;
}

/** Whether all was back when a job that had opened anything was closed. */
function putBackShare(story: Story, isMine: Mine): Share {
  const opened = story.entries.some(
    ({ said }) =>
      said?.kind === 'part-off' ||
      said?.kind === 'aid-on' ||
      (said?.kind === 'access' && said.now === 'open'),
  );
  return story.closed === undefined || !opened || !isMine(story.closed)
    ? { good: 0, of: 0 }
    : { good: apartNow(story).length === 0 ? 1 : 0, of: 1 };
}

function minutesOf(decisions: readonly Decision[]): Skills['minutes'] {
  const told = decisions.flatMap(({ kind, planned, taken }) =>
    kind === 'passed' || planned === undefined || planned === 0 || taken < 0.5
      ? []
      : [{ planned, taken }],
  );
  return {
    planned: told.reduce((sum, { planned }) => sum + planned, 0),
    taken: told.reduce((sum, { taken }) => sum + taken, 0),
  };
}
