import { splitParts } from '../../core/session/costs/parts.ts';
import type { ActionOf } from '../../core/session/action.ts';
import type { Story } from '../../core/session/story.ts';
import { inform, object, show, transition, type Transition } from '../effect.ts';
import { steps } from '../keys/walk.ts';
import type { Page } from '../page.ts';
import { walk, type At, type MendedField, type Screen } from '../screen.ts';
import type { State } from '../state.ts';
import { takeAction } from '../take-action.ts';
import { forms, inForm } from '../typing/form.ts';
import { noMinutes, parseMinutes } from '../typing/minutes.ts';
import { textOf, typing } from '../typing/typing.ts';

export const mendedPage: Page<'mended'> = {
  mode: () => 'form-text',
  update: (state, screen, press) => {
    const pressed = inForm(screen, forms.mended, press);
    if (pressed.kind === 'done') return keep(state, screen);
    return show(state, pressed.kind === 'left' ? walk : { ...screen, ...pressed.form });
  },
  open,
  bindings: [
    {
      modes: [...steps, 'closed'],
      keys: ['m'],
      command: 'mended',
      about: 'what exactly was found or done, of the cause condemned or repaired last',
    },
  ],
};

/** The field that asks what exactly was found. */
export const whatWasFound = (found?: string): At<'walk'> => ({
  kind: 'walk',
  input: { kind: 'text', purpose: 'found', typed: typing(found) },
});

/** The field that asks what exactly a check in own words showed. */
export const whatWasShown: At<'walk'> = {
  kind: 'walk',
  input: { kind: 'text', purpose: 'shown', typed: typing() },
};

/** The page that asks what was done in the last repair, with what is noted of it already. */
export function whatWasDone({ session }: Pick<State, 'session'>): Screen {
  const repair = session?.story.repairs.at(-1);
  if (repair === undefined) return walk;
  const noted = notedOf(repair);
  return {
    kind: 'mended',
    n: repair.n,
    at: 0,
    fields: {
      did: typing(noted.did),
      minutes: typing(noted.minutes),
      parts: typing(noted.parts),
      cost: typing(noted.cost),
    },
  };
}

/** What is noted of a repair, as it would be typed. */
const notedOf = (repair: Story['repairs'][number] | undefined): Record<MendedField, string> => ({
  did: repair?.did ?? '',
  minutes: repair?.minutes === undefined ? '' : String(repair.minutes),
  parts: (repair?.parts ?? []).join('; '),
  cost: repair?.cost ?? '',
});

function open(state: State): Transition {
  const condemned = state.session?.story.condemned.at(-1);
  const repaired = state.session?.story.repairs.at(-1);
  if ((repaired?.n ?? 0) > (condemned?.n ?? 0)) return show(state, whatWasDone(state));
  return condemned === undefined
    ? inform(state, 'No cause is condemned or repaired yet.')
    : show(state, whatWasFound(condemned.found));
}

/** Keeps what was typed; a page left empty keeps nothing, and all of it is told as not noted. */
function keep(state: State, screen: At<'mended'>): Transition {
  const { n, fields } = screen;
  const noted = notedOf(state.session?.story.repairs.find((one) => one.n === n));
  const anew = (field: MendedField): string | undefined => {
    const text = textOf(fields[field]).trim();
    return text === '' || text === noted[field] ? undefined : text;
  };
  const [did, minutes, parts, cost] = forms.mended.map(anew);
  const worked = minutes === undefined ? undefined : parseMinutes(minutes);
  if (minutes !== undefined && worked === undefined)
    return object(
      { ...state, screen: { ...screen, at: forms.mended.indexOf('minutes') } },
      noMinutes(minutes),
    );
  const action: ActionOf<'describe'> = {
    do: 'describe',
    n,
    ...(did !== undefined && { text: did }),
    ...(worked !== undefined && { minutes: worked }),
    ...(parts !== undefined && { parts: [...splitParts(parts)] }),
    ...(cost !== undefined && { cost }),
  };
  if (Object.keys(action).length === 2) return show(state, walk);
  const acted = takeAction(state, action);
  return acted.outcome.kind === 'refused'
    ? acted
    : transition({ ...acted.state, screen: walk }, ...acted.effects);
}
