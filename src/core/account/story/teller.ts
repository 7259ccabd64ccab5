import { clockTime, dateOf, secondsBetween } from '../../session/clock.ts';
import { closingWords, takenWords } from '../clauses/apart.ts';
import { quietSentence } from '../clauses/checks.ts';
import { forms, type Clause, type Form, type Phrasing } from '../clauses/clause.ts';
import { startOf } from '../clauses/grammar.ts';
import type { AccountContext } from '../context.ts';
import { numberWord } from '../words/wording.ts';
import { isLong, type Group } from './gather.ts';
import { meaningOf } from './meaning.ts';
import { surpriseWords } from './surprise.ts';
import { whyWords } from './why.ts';

/** Minutes after which the time is told again inside a paragraph. */
const tellAgain = 20;

/** How much of a story is told: a long one leaves out more. */
export type Measure = {
  /** Healthy things named in one sentence. */
  readonly named: number;
  /** What a check was to tell, and what surprised, is said. */
  readonly reasons: boolean;
};

/** Said once, under the first figure. */
const notAHundred = 'Several things can be wrong at once, so such figures need not add up to 100.';

/** Says paragraph after paragraph, keeping what time was told last and how the last sentences began. */
export class Teller {
  readonly #context: AccountContext;
  readonly #measure: Measure;
  readonly #surprises: ReadonlyMap<number, number>;
  #day: string;
  #told = '';
  #starts: readonly string[] = [];
  #figureSaid = false;
  /** What its checks were to tell is said once in a paragraph. */
  #asked = false;

  constructor(context: AccountContext, measure: Measure, surprises: ReadonlyMap<number, number>) {
    this.#context = context;
    this.#measure = measure;
    this.#surprises = surprises;
    this.#day = dateOf(context.story.header.opened);
  }

  /** One paragraph; what its findings came to stands after the last of them. */
  paragraph(groups: readonly Group[]): string {
    const events = groups.flatMap(({ clauses }) =>
      clauses.flatMap(({ n, finding }) => (finding === undefined ? [] : [n])),
    );
    const last = groups.findLastIndex(({ clauses: [{ finding }] }) => finding !== undefined);
    this.#asked = false;
    const sentences = groups.flatMap((group, index): readonly string[] => {
      const said = this.#group(group, index === 0);
      const after = index === last ? [meaningOf(this.#context, events)] : [];
      for (const text of after) this.#keepStart(text);
      return [said, ...after];
    });
    return this.#withFigures(sentences.filter((text) => text !== '')).join(' ');
  }

  /** Other words of the same story. */
  say(text: string): string {
    this.#keepStart(text);
    return text;
  }

  #withFigures(sentences: readonly string[]): readonly string[] {
    const first = this.#figureSaid ? -1 : sentences.findIndex((text) => / %/.test(text));
    if (first < 0) return sentences;
    this.#figureSaid = true;
    this.#keepStart(notAHundred);
    return [...sentences.slice(0, first + 1), notAHundred, ...sentences.slice(first + 1)];
  }

  #group({ clauses }: Group, first: boolean): string {
    const [one] = clauses;
    // Its caption stands under it, and a long note in lines of its own.
    if (one.picture !== undefined) return '';
    const when = this.#when(clauses, first);
    const said = this.#saying(clauses, when);
    this.#keepStart(said);
    if (this.#why(one) !== '') this.#asked = true;
    const expected = this.#measure.reasons ? this.#surprises.get(one.n) : undefined;
    return expected === undefined || clauses.length > 1
      ? said
      : `${said} ${surpriseWords(expected)}`;
  }

  #saying(clauses: Group['clauses'], when: string): string {
    const [one] = clauses;
    if (one.kind === 'taking off')
      return takenWords(
        this.#context.who,
        clauses.flatMap(({ taken }) => taken ?? []),
        { when },
      );
    if (one.kind === 'closing')
      return closingWords(
        clauses.flatMap(({ closed }) => closed ?? []),
        { when },
      );
    if (one.noted !== undefined && isLong(one.noted))
      return `${when === '' ? 'A longer' : `${when} a longer`} note was kept:`;
    return this.#freshly((form) => this.#inForm(clauses, { when, form }));
  }

  #inForm(clauses: Group['clauses'], { when, form }: Phrasing & { readonly form: Form }): string {
    const [one] = clauses;
    const findings = clauses.flatMap(({ finding }) => finding ?? []);
    const isRun = one.kind === 'quiet finding' && (clauses.length > 1 || form !== 'person');
    if (isRun)
      return quietSentence(this.#context, findings, { when, form, most: this.#measure.named });
    return one.phrase({ when, why: this.#why(one), form });
  }

  #why({ finding, kind }: Clause): string {
    return finding === undefined || kind !== 'finding' || !this.#measure.reasons || this.#asked
      ? ''
      : whyWords(this.#context, finding);
  }

  /** The first form that does not begin as one of the two sentences before it did. */
  #freshly(say: (form: Form) => string): string {
    const said = forms.map(say);
    const [first = ''] = said;
    const fresh = said.find((text) => !this.#starts.includes(startOf(text)));
    if (fresh !== undefined || this.#starts.includes('then')) return fresh ?? first;
    return `Then ${/^I\b/.test(first) ? first : first.slice(0, 1).toLowerCase() + first.slice(1)}`;
  }

  #keepStart(text: string): void {
    if (text !== '') this.#starts = [startOf(text), ...this.#starts].slice(0, 2);
  }

  /** `At 10:48`, `From 10:48 to 11:02`, `On 2026-04-12 at 09:10`; empty where it need not be said. */
  #when(clauses: readonly [Clause, ...Clause[]], first: boolean): string {
    const [from, to] = [clauses[0].at, clauses.at(-1)?.at ?? clauses[0].at];
    const since = secondsBetween(this.#told, from);
    const far = since === undefined || Math.abs(since) >= tellAgain * 60;
    const newDay = dateOf(from) !== this.#day;
    if (!far && !newDay && !(first && this.#isLater(since))) return '';
    this.#told = to;
    this.#day = dateOf(from);
    const day = newDay ? `On ${dateOf(from)} ` : '';
    return `${day}${day === '' ? 'At' : 'at'} ${clockTime(from)}`;
  }

  /** A new paragraph tells the time once some minutes have gone by. */
  #isLater(since: number | undefined): boolean {
    return since === undefined || Math.abs(since) >= (tellAgain / 2) * 60;
  }
}

/** `Seven more checks changed little.` */
export const leftOutWords = (checks: number): string =>
  `${checks === 1 ? 'One more check' : `${startWord(checks)} more checks`} changed little.`;

const startWord = (count: number): string => {
  const word = numberWord(count);
  return word.slice(0, 1).toUpperCase() + word.slice(1);
};
