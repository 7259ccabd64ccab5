import { misfit } from '../../tree/fit.ts';
import { isOwn } from '../../tree/own/bare.ts';
import { fittingCautions } from '../../tree/own/fitting-cautions.ts';
import { readHealthyBand } from '../../tree/own/healthy-band.ts';
import { askOf, taken } from '../../tree/own/named.ts';
import { refusals, refusedIn } from '../../tree/lint/refused-words.ts';
import { idFor } from '../../tree/writing/names.ts';
import type { ActionOf } from '../action.ts';
import type { Payload, PayloadOf } from '../event.ts';
import { shopOf } from '../header/header.ts';
import { asWalked } from '../header/walked-tree.ts';
import { currentLeg, type Story } from '../story.ts';
import { treeNamed, unsaid } from './lookup.ts';
import { accept, refuse, refuseUnknown, type Refused, type Ruling, type World } from './ruling.ts';

/** A check in own words; the complaint's own test is asked at once, any other is begun. */
export function nameCheck(action: ActionOf<'name-check'>, story: Story): Ruling {
  const said = saidOf(action);
  const wrong =
    notHere(story) ??
    unsaid(said.what, 'what is looked at') ??
    refusedWords([said.what, said.good]) ??
    (action.test === true ? madeAlready(story) : undefined);
  if (wrong !== undefined) return wrong;
  return action.test === true
    ? accept([named(story, currentLeg(story).tree.complaint.confirm, said)])
    : beginNamed(story, said);
}

function beginNamed(story: Story, said: SaidOfCheck): Ruling {
  const id = freshId(story, said.what);
  return accept([{ ...named(story, id, said), implied: true }, begun(id)]);
}

/** What a person says of a check, without blanks around it; what stays empty is left out. */
type SaidOfCheck = Pick<PayloadOf<'check-named'>, 'does' | 'what' | 'good' | 'bad'>;

function saidOf({ does = 'try', ...action }: ActionOf<'name-check'>): SaidOfCheck {
  const [good, bad] = [action.good, action.bad].map(trimmed);
  return {
    does,
    what: action.what.trim(),
    ...(good !== undefined && { good }),
    ...(bad !== undefined && { bad }),
  };
}

/** What a healthy one shows judges the reading, where it was told as a band. */
function named(story: Story, check: string, said: SaidOfCheck): PayloadOf<'check-named'> {
  const { good = '' } = said;
  const reading = readHealthyBand(good);
  const { shop } = currentLeg(story);
  return {
    kind: 'check-named',
    check,
    ...said,
    ...(reading !== undefined && { does: 'measure', reading }),
    cautions: [...fittingCautions([askOf(said), good], shop)],
  };
}

const madeAlready = (story: Story): Refused | undefined =>
  story.findings.some(({ check }) => check === currentLeg(story).tree.complaint.confirm)
    ? refuse(
        'test-made',
        "The complaint's own test has been made: it is repeated as it is.",
        'Name another check.',
      )
    : undefined;

/** A check of the library, with its cautions, its standing and its limits, and nothing it leads to. */
export function takeCheck(action: ActionOf<'take-check'>, story: Story, world: World): Ruling {
  const wrong = notHere(story);
  if (wrong !== undefined) return wrong;
  const { tree } = currentLeg(story);
  if (Object.hasOwn(tree.checks, action.check)) return accept([begun(action.check)]);
  const found = treeNamed(action.tree, world);
  if ('kind' in found) return found;
  const other = misfit(found.tree, story.facts);
  if (other !== undefined) return { kind: 'refused', problem: other };
  const walked = asWalked(found.tree, story);
  const check = walked.checks[action.check];
  if (check === undefined) return refuseUnknown('check', action.check, Object.keys(walked.checks));
  const whole = taken(check);
  return accept([
    {
      kind: 'check-taken',
      check: action.check,
      tree: action.tree,
      whole,
      shop: shopOf({ ...tree, causes: {}, checks: { [action.check]: whole } }, found.shop),
      implied: true,
    },
    begun(action.check),
  ]);
}

/** A cause in own words: named, not yet said to be it. */
export function nameCause(action: ActionOf<'name-cause'>, story: Story): Ruling {
  const [name = '', where] = [action.name, action.where].map(trimmed);
  const wrong = notHere(story) ?? unsaid(name, 'what is wrong');
  if (wrong !== undefined) return wrong;
  return accept([
    {
      kind: 'cause-named',
      cause: freshId(story, name),
      name,
      ...(where !== undefined && { where }),
      cautions: [...fittingCautions([name, where ?? ''], currentLeg(story).shop)],
    },
  ]);
}

const begun = (check: string): Payload => ({ kind: 'check-begun', check, acknowledged: [] });

/** An id of its own over all complaints of the job: names are good from leg to leg. */
const freshId = ({ legs }: Story, words: string): string =>
  idFor(
    words,
    legs.flatMap(({ tree }) => [...Object.keys(tree.checks), ...Object.keys(tree.causes)]),
  );

const trimmed = (text: string | undefined): string | undefined => {
  const clean = text?.trim() ?? '';
  return clean === '' ? undefined : clean;
};

function notHere(story: Story): Refused | undefined {
  return isOwn(currentLeg(story).tree)
    ? undefined
    : refuse(
        'has-a-tree',
        'This complaint has a tree: its checks and causes stand in that.',
        'Choose one of them, or keep what else was seen as a note.',
      );
}

/** Work that nothing makes safe is not named as a step. */
function refusedWords(texts: readonly (string | undefined)[]): Refused | undefined {
  for (const refusal of refusals)
    for (const text of texts) {
      const value = text === undefined ? undefined : refusedIn(refusal, text);
      if (value !== undefined)
        return refuse(
          'hazard-refused',
          `This is what no caution makes safe (${refusal.name}). ${refusal.why}`,
          'Look another way; what was done already may be kept as a note.',
          value,
        );
    }
  return undefined;
}
