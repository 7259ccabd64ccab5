import { good, type Parsed } from '../../problem.ts';
import { readNumber } from '../../trade/units/number.ts';
import { hazardsIn } from '../lint/hazard-words.ts';
import { refusals, refusedIn } from '../lint/refused-words.ts';
import type { Check, Standing } from '../model.ts';
import { Check as CheckModel, Standing as StandingModel } from '../shapes.ts';
import type { Shop } from '../shop.ts';
import type { DraftResults, Work } from './draft.ts';
import { ask, notUnderstood, type Asking } from './question.ts';

type Kind = Check['kind'];
const kinds: readonly Kind[] = CheckModel.shape.kind.options;

/** What a check of a kind takes unless more is said: common practice, no source. */
const usualMinutes: Readonly<Record<Kind, number>> = {
  look: 2,
  listen: 2,
  feel: 2,
  measure: 5,
  try: 3,
  ask: 1,
};

/** How a kind of check is spoken of; the first that fits. */
const spoken: readonly (readonly [RegExp, Kind])[] = [
  [/\b(hear|listen|sounds?|clicks?|noises?|hum)\b/i, 'listen'],
  [/\b(feel|play|by hand|stiff|loose)\b/i, 'feel'],
  [/\b(whole|bright|burnt|colou?r|leaks?|look|see|broken|cracked|green)\b/i, 'look'],
  [/\b(owner|asked|since when)\b/i, 'ask'],
];

/** One step of work; one that nothing makes safe is refused at once. */
export function readStep(line: string): Parsed<string> {
  for (const refusal of refusals) {
    const found = refusedIn(refusal, line);
    if (found !== undefined)
      return notUnderstood(
        `That tells somebody to do what no caution makes safe (${refusal.name}). ${refusal.why}`,
        'Say another way; a warning may begin with "Never".',
      );
  }
  return line.length > 400 ? notUnderstood('A step has room for 400 characters.') : good(line);
}

/** Asks for steps, one a line, until an empty one. */
export function* askSteps(text: string, example: string): Asking<readonly string[]> {
  const steps: string[] = [];
  for (;;) {
    const step = yield* ask({
      text: steps.length === 0 ? text : `Step ${steps.length + 1}, or Enter when that is all.`,
      may: 'One short step a line; an empty line ends them.',
      example,
      ...(steps.length > 0 && { offered: '' }),
      read: (line) => (line === '' ? good('') : readStep(line)),
    });
    if (step === '') return steps;
    steps.push(step);
  }
}

/** What a check takes, guessed from its words and its reading. */
export function guessCheck(words: string, { reading }: DraftResults, shop: Shop): Work {
  const named = spoken.find(([pattern]) => pattern.test(words))?.[1] ?? 'try';
  const kind = reading === undefined ? named : 'measure';
  const tools = electrical.includes(reading?.quantity ?? '') && Object.hasOwn(shop.tools, 'dvm');
  return {
    kind,
    minutes: usualMinutes[kind],
    standing: guessStanding(words, reading?.quantity),
    tools: tools ? ['dvm'] : [],
    parts: [],
  };
}

const electrical: readonly string[] = ['voltage', 'resistance', 'current'];

function guessStanding(words: string, quantity: string | undefined): Standing {
  if (/\bcrank(s|ed|ing)?\b/i.test(words)) return { key: 'start', engine: 'cranking' };
  if (/\b(idles?|idling|engine (running|runs))\b/i.test(words))
    return { key: 'run', engine: 'idling' };
  const live = quantity === 'voltage' || quantity === 'current';
  const on = live || /\b(key on|switch(ed)? on|on high|held|pressed?)\b/i.test(words);
  if (on && !/\bkey off\b/i.test(words)) return { battery: 'connected', key: 'run', engine: 'off' };
  return { key: 'off', engine: 'off' };
}

export const guessRepair = (words: string): Work => ({
  minutes: 30,
  standing: {
    ...(/\bbattery\b[^.]*\boff\b|\bdisconnect/i.test(words) && {
      battery: 'disconnected' as const,
    }),
    key: 'off',
    engine: 'off',
  },
  tools: [],
  parts: [],
});

/** What the work takes as a line that can be typed anew. */
export function showWork({ kind, minutes, standing, tools }: Work): string {
  const stands = Object.entries(standing).map(([what, state]) => `${what} ${state}`);
  const named = tools.map((id) => `tool ${id}`);
  return [...(kind === undefined ? [] : [kind]), `${minutes} min`, ...stands, ...named].join(', ');
}

/** Asks what the work takes; what is typed changes what is offered, word by word. */
export function* askWork(offered: Work, shop: Shop): Asking<Work> {
  const repair = offered.kind === undefined;
  return yield* ask({
    text: repair ? 'What does the repair take?' : 'What does this check take?',
    may: `What differs, with commas: minutes, ${repair ? '' : `${kinds.join(', ')}, `}"key run", "engine idling", "battery disconnected", "tool test lamp".`,
    example: repair ? '15, battery disconnected' : '8, key off',
    offered: showWork(offered),
    read: (line) => readWork(line, offered, shop),
  });
}

/** Asks what has to be bought, names with commas between. */
export function* askParts(): Asking<readonly string[]> {
  return yield* ask({
    text: 'What has to be bought?',
    may: 'Parts, with commas between them.',
    example: 'fuse',
    offered: 'nothing',
    read: (line) =>
      good(
        /^(nothing|none|no)$/i.test(line) ? [] : line.split(/\s*,\s*/).filter((one) => one !== ''),
      ),
  });
}

/** Reads `8 min, key off, tool test lamp` over what was offered. */
export function readWork(line: string, offered: Work, shop: Shop): Parsed<Work> {
  let work = offered;
  for (const token of line.split(/\s*[,;]\s*/).filter((one) => one !== '')) {
    const read = readToken(token, work, { shop, repair: offered.kind === undefined });
    if (read.kind === 'bad') return read;
    work = read.value;
  }
  return good(work);
}

type Around = { readonly shop: Shop; readonly repair: boolean };

function readToken(token: string, work: Work, { shop, repair }: Around): Parsed<Work> {
  const [, first = '', rest = ''] = /^(\S+)\s*(.*)$/.exec(token) ?? [];
  const kind = repair ? undefined : kinds.find((one) => one === token.toLowerCase());
  if (kind !== undefined) return good({ ...work, kind });
  const minutes = minutesIn(token);
  if (minutes !== undefined) return withMinutes(minutes, work);
  const what = standings.find((one) => one === first.toLowerCase());
  if (what !== undefined) return withStanding(what, rest, work);
  if (/^tools?$/i.test(first)) return withTool(rest, work, shop);
  return notUnderstood(`"${token}" is nothing that the work takes.`);
}

function minutesIn(token: string): number | undefined {
  const number = readNumber(token);
  return /^(min(utes?)?)?$/i.test(number?.rest ?? '-') ? number?.value : undefined;
}

const withMinutes = (minutes: number, work: Work): Parsed<Work> =>
  minutes > 0 && minutes <= 600
    ? good({ ...work, minutes })
    : notUnderstood(`${minutes} minutes can hardly be meant.`);

const standings = Object.keys(StandingModel.shape) as (keyof Standing)[];

function withStanding(what: keyof Standing, rest: string, work: Work): Parsed<Work> {
  const state = rest.toLowerCase().replaceAll(' ', '-');
  const read = StandingModel.safeParse({ ...work.standing, [what]: state });
  if (read.success) return good({ ...work, standing: read.data });
  const states: readonly string[] = StandingModel.shape[what].unwrap().options;
  return notUnderstood(`"${rest}" is no way the ${what} can stand: ${states.join(', ')}.`);
}

function withTool(words: string, work: Work, shop: Shop): Parsed<Work> {
  const small = words.toLowerCase();
  const fitting = Object.entries(shop.tools).filter(
    ([id, { name }]) => id === small || name.toLowerCase().includes(small),
  );
  const whole =
    fitting.find(([id]) => id === small) ?? (fitting.length === 1 ? fitting[0] : undefined);
  if (whole !== undefined) return good({ ...work, tools: [...new Set([...work.tools, whole[0]])] });
  const some = fitting.slice(0, 4).map(([id, { name }]) => `${id} (${name})`);
  return notUnderstood(
    fitting.length === 0
      ? `No tool in the shop is called "${words}".`
      : `Several tools are called so: ${some.join('; ')}.`,
    'Type more of its name, or go on without; "trees shop" lists the tools.',
  );
}

/** Offers the cautions that words and standing ask for; nothing is added that was not taken. */
export function* askCautions(
  texts: readonly string[],
  standing: Standing,
  shop: Shop,
): Asking<readonly string[]> {
  const taken: string[] = [];
  for (const { name, cautions } of hazardsIn(texts, standing)) {
    const fitting = cautions.filter((id) => Object.hasOwn(shop.cautions, id));
    if (fitting.length === 0 || fitting.some((id) => taken.includes(id))) continue;
    taken.push(...(yield* askCaution(name, fitting, shop)));
  }
  return taken;
}

function* askCaution(
  name: string,
  fitting: readonly string[],
  shop: Shop,
): Asking<readonly string[]> {
  return yield* ask({
    text: `This has to do with ${name}. Which warning belongs before the work?`,
    list: fitting.map((id, index) => {
      const { hazard = '', when = '', text = '' } = shop.cautions[id] ?? {};
      return `${index + 1} ${hazard} (${when}): ${text}`;
    }),
    may: 'The number of one, or of several; "none" where the words hurt nobody here (better: back, and say it otherwise).',
    example: fitting.length > 1 ? '1 2' : '1',
    offered: '1',
    read: (line) => {
      if (/^none$/i.test(line)) return good([]);
      const ids = line.split(/[\s,+]+/).map((number) => fitting[Number(number) - 1]);
      return ids.every((id) => id !== undefined)
        ? good(ids)
        : notUnderstood(`The warnings go from 1 to ${fitting.length}.`);
    },
  });
}
