import { settledFrom } from '../reason/advice/explain.ts';
import { leaderIn } from '../reason/history/belief-history.ts';
import { contradictions } from '../session/contradiction.ts';
import { isAsExpected } from '../session/expecting/expected.ts';
import type { Story } from '../session/story.ts';
import { isGuess, type Decision } from './decision.ts';

/** How many decisions a talk of ten minutes has room for. */
const room = 3;

/** Why a decision is worth talking about, the gravest first. */
const topics = [
  'safeguard',
  'guess',
  'quicker',
  'disagree',
  'vain',
  'verified',
  'misjudged',
  'look',
  'unsure',
  'own-way',
  'surprise',
  'failed',
  'settled',
  'turn',
  'passed',
  'slow',
] as const;
export type Topic = (typeof topics)[number];

/** A finding less likely than this would have been expected by few. */
const fewUnder = 0.2;

/** What a decision is worth talking about for; undefined for most of them. */
const topicOf = (story: Story, decision: Decision): Topic | undefined =>
  graveTopic(story, decision) ??
  kindTopic(decision) ??
  findingTopic(decision) ??
  (isSlow(decision) ? 'slow' : undefined);

function graveTopic(story: Story, decision: Decision): Topic | undefined {
  const { n, charged, tellsNothing } = decision;
  if (story.passed.some((one) => one.n === n)) return 'safeguard';
  if (isGuess(decision)) return 'guess';
  if (tellsNothing) return 'vain';
  if (charged > 0) return 'quicker';
  return contradictions(story).some(({ later }) => later.n === n) ? 'disagree' : undefined;
}

function kindTopic(decision: Decision): Topic | undefined {
  const { kind } = decision;
  if (kind === 'verified' || kind === 'look' || kind === 'unsure' || kind === 'passed') return kind;
  return isMisjudged(decision) ? 'misjudged' : undefined;
}

/** More than twice what is planned, and five minutes more at least: our own judgment. */
const isSlow = ({ planned, taken }: Decision): boolean =>
  planned !== undefined && planned > 0 && taken > 2 * planned && taken > planned + 5;

/** What was expected was unlikely, and did not come. */
function isMisjudged({ expected, finding, foreseen }: Decision): boolean {
  if (expected === undefined || finding === undefined) return false;
  return (foreseen.get(expected) ?? 1) < fewUnder && !isAsExpected(finding, { result: expected });
}

/** What a finding did: nobody is blamed for it, and much is to be learnt of it. */
function findingTopic(decision: Decision): Topic | undefined {
  const { kind, finding, foreseen } = decision;
  if (kind === 'proof') return failed(decision);
  if (kind === 'asked') return undefined;
  const certain = finding !== undefined && finding.orResult === undefined;
  if (certain && (foreseen.get(finding.result) ?? 1) < fewUnder) return 'surprise';
  return kind === 'chosen' ? 'own-way' : leadTopic(decision);
}

/** Whether a finding settled the matter, or let another lead. */
function leadTopic({ before, after, finding }: Decision): Topic | undefined {
  if (before === undefined || after === undefined || finding === undefined) return undefined;
  const leader = leaderIn(after);
  if (leader === undefined) return undefined;
  const [from, to] = [before.get(leader) ?? 0, after.get(leader) ?? 0];
  if (from < settledFrom && to >= settledFrom) return 'settled';
  return leaderIn(before) === leader ? undefined : 'turn';
}

/** A proof that failed: the complaint was still there, and the chances moved. */
const failed = ({ finding, foreseen }: Decision): Topic | undefined => {
  const [healthy] = foreseen.keys();
  return healthy !== undefined && finding?.result !== healthy ? 'failed' : undefined;
};

export type Worth = { readonly decision: Decision; readonly topic: Topic };

/** The decisions worth talking about: the gravest, of equal ones the dearest, told in their order. */
export function worthTalking(story: Story, decisions: readonly Decision[]): readonly Worth[] {
  const weight = ({ topic, decision }: Worth): number =>
    topics.indexOf(topic) * 1000 - decision.charged;
  return decisions
    .flatMap((decision) => {
      const topic = topicOf(story, decision);
      return topic === undefined ? [] : [{ decision, topic }];
    })
    .toSorted((one, other) => weight(one) - weight(other))
    .slice(0, room)
    .toSorted((one, other) => one.decision.n - other.decision.n);
}
