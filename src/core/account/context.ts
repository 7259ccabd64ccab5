import { beliefHistory, type BeliefStep } from '../reason/history/belief-history.ts';
import { contradictions, countedFindings, type Contradiction } from '../session/contradiction.ts';
import { firstLeg, type Finding, type Story } from '../session/story.ts';
import { complaintsOf } from '../session/complaints.ts';
import { asClause } from './words/wording.ts';
import { repeatsOf } from './blocks/ledger.ts';

/** Who tells: one person, a shop, or somebody about others. */
export type Voice = 'i' | 'we' | 'they';
/** A reader is a stranger: no names. The shop knows the people; a mentor does too, and reads what stands in the margin. */
export type Audience = 'reader' | 'mentor' | 'shop';

export type AccountOptions = {
  readonly voice?: Voice;
  readonly audience?: Audience;
  /** Folder beside the account that its pictures lie in; none are shown without it. */
  readonly pictures?: string;
  /** What has become of each photo, by the number of its event. */
  readonly photos?: Photos;
  /** What the drawings are linked as, where not as they are drawn. */
  readonly drawnAs?: 'png';
  /** A line for a log, the first screenful, or all; all where it is left out. */
  readonly length?: Length;
};

export type Length = 'line' | 'short' | 'full';

/** A photo that lies in the folder of pictures under this name, or one that cannot be shown. */
export type AccountPhoto =
  | { readonly kind: 'there'; readonly file: string }
  | { readonly kind: 'missing' | 'changed' };
export type Photos = ReadonlyMap<number, AccountPhoto>;

/** A story with everything that several parts of its account need, worked out once. */
export type AccountContext = {
  readonly story: Story;
  readonly audience: Audience;
  readonly length: Length;
  /** What the files of drawings end in. */
  readonly drawnAs: 'svg' | 'png';
  /** Folder beside the account for its pictures; none are drawn without one. */
  readonly folder: string | undefined;
  /** `I`, `we` or `they`, as inside a sentence. */
  readonly who: string;
  readonly photos: Photos;
  readonly history: readonly BeliefStep[];
  readonly findings: ReadonlyMap<number, Finding>;
  /** Findings that only repeated one before them. */
  readonly repeated: ReadonlySet<number>;
  /** Contradictions that nobody has said anything of, by the number of the later finding. */
  readonly open: ReadonlyMap<number, Contradiction>;
  /** Findings that do not count any more, or not while a contradiction is open, each in words. */
  readonly setAside: ReadonlyMap<number, string>;
  readonly stepAt: (n: number) => BeliefStep | undefined;
};

const pronouns: Readonly<Record<Voice, string>> = {
  i: 'I',
  we: 'we',
  they: 'they',
};

/** Works out what the parts of an account share; without a history nothing is said of the suspects. */
export function accountContext(
  story: Story,
  options: AccountOptions = {},
  history: readonly BeliefStep[] = beliefHistory(story),
): AccountContext {
  const who = pronouns[options.voice ?? 'we'];
  const steps = new Map(history.map((step) => [step.n, step]));
  const open = contradictions(story);
  const counted = new Set(countedFindings(story).map(({ n }) => n));
  return {
    story,
    open: new Map(open.map((one) => [one.later.n, one])),
    setAside: new Map([
      ...open.map(({ earlier }) => [earlier.n, 'set aside for the worse one after it'] as const),
      ...story.findings.flatMap(({ n }) =>
        counted.has(n) ? [] : [[n, 'does not count any more'] as const],
      ),
    ]),
    audience: options.audience ?? 'shop',
    length: options.length ?? 'full',
    drawnAs: options.drawnAs ?? 'svg',
    folder: options.pictures,
    photos: options.photos ?? new Map(),
    who,
    history,
    findings: new Map(story.findings.map((finding) => [finding.n, finding])),
    repeated: new Set(repeatsOf(story).map(({ n }) => n)),
    stepAt: (n) => steps.get(n),
  };
}

/** The complaints in their order; a stranger is told what was wrong, the shop knows the vehicle by its name. */
export const accountTitle = ({ story, audience }: AccountContext): string => {
  const [first = firstLeg(story).tree.title, ...others] = complaintsOf(story).map(
    (one) => one.title,
  );
  const last = others.slice(-1).map((other) => `and ${asClause(other)}`);
  const title = [first, ...others.slice(0, -1).map(asClause), ...last].join('; ');
  return audience === 'reader' ? title : `${story.header.vehicle.name}: ${title}`;
};
