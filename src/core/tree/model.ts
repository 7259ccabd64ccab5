import type * as z from 'zod';
import type * as shapes from './shapes.ts';
import type { Written } from './written/written.ts';

/** The id of the cause that stands for everything which is not on a tree's list. */
export const unlisted = 'unlisted';

export type Cause = z.output<typeof shapes.Cause>;
export type Repair = z.output<typeof shapes.Repair>;
export type Reading = z.output<typeof shapes.Reading>;
export type NamedReading = z.output<typeof shapes.NamedReading>;
export type Standing = z.output<typeof shapes.Standing>;
export type Safeguard = z.output<typeof shapes.Safeguard>;
export type BookLimit = z.output<typeof shapes.BookLimit>;

/** Where a result leads while each of these checks has shown one of its results. */
export type Lead = {
  readonly if: Readonly<Record<string, readonly string[]>>;
  readonly go: string;
};

/** A result as it is judged and led from; the leads that hold by what is known come before `next`. */
export type Result = z.output<typeof shapes.Result> & { readonly leads?: readonly Lead[] };

export type Check = Omit<z.output<typeof shapes.Check>, 'results'> & { results: Result[] };

/**
 * A tree as the program walks it: chances by position, bands with both ends. One that was written
 * by name and with facts that flip what they flip carries what was written, to be settled anew.
 */
export type Tree = Omit<z.output<typeof shapes.Tree>, 'checks'> & {
  checks: Record<string, Check>;
  written?: Written;
};
