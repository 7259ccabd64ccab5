import type { Problem } from '../../problem.ts';
import { meant } from '../../trade/units/nearest.ts';
import type { Tree } from '../../tree/model.ts';
import type { Shop } from '../../tree/shop.ts';
import type { KeptPhoto } from '../record/photo.ts';
import type { Answer } from '../answer.ts';
import type { Payload, PayloadOf } from '../event.ts';
import type { Secret } from '../practice/secret.ts';
import type { Story } from '../story.ts';

/** What becomes of an action: events to be written, or one clear line why not. */
export type Ruling =
  | {
      readonly kind: 'accepted';
      readonly payloads: readonly Payload[];
      /** Things the mechanic should hear although the action stands. */
      readonly warnings: readonly string[];
    }
  | Refused;

/** One clear line why an action cannot be. */
export type Refused = { readonly kind: 'refused'; readonly problem: Problem };

/** A practice on a hidden fault, as the rules ask it; nothing of it where its secret is lost. */
export type HiddenFault = {
  readonly secret?: Secret | undefined;
  /** What the vehicle shows on a check now; undefined for a check that the tree has not. */
  readonly answer?: ((story: Story, check: string) => Answer | undefined) | undefined;
  /** What the advice says now. */
  readonly hint?:
    | ((story: Story) => Omit<PayloadOf<'hinted'>, 'kind' | 'minutes'> | undefined)
    | undefined;
};

/** What an action may need from outside the session. */
export type World = {
  /** A tree of the library with its shop, for going to another complaint. */
  readonly tree: (id: string) => { readonly tree: Tree; readonly shop: Shop } | undefined;
  /** The library's shop, where there is a library. */
  readonly shop?: Shop | undefined;
  /** What a practice session hides, and what its vehicle and the advice say of it. */
  readonly practice?: HiddenFault | undefined;
  /** The photo of an action, once it was read and lies beside the session. */
  readonly photo?: KeptPhoto | undefined;
};

export const accept = (payloads: readonly Payload[], warnings: readonly string[] = []): Ruling => ({
  kind: 'accepted',
  payloads,
  warnings,
});

export const refuse = (code: string, message: string, mend: string, value?: string): Refused => ({
  kind: 'refused',
  problem: { code, message, mend, ...(value !== undefined && { value }) },
});

export const refuseUnknown = (what: string, id: string, names: readonly string[]): Refused =>
  refuse(
    `unknown-${what}`,
    `There is no ${what} "${id}" here.`,
    names.length > 0 ? meant(id, names) : `This tree has no ${what}.`,
    id,
  );
