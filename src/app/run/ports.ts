import type { Parsed } from '../../core/problem.ts';
import type { startAdvice } from '../../core/reason/advice/advise.ts';
import type { openPhone } from '../../phone/phone.ts';
import type { PathRoots } from '../../store/folder.ts';
import type { Disk } from '../../store/sessions.ts';

/** What the program needs of the world. Tests pass their own. */
export type Ports = {
  readonly disk: Disk;
  readonly folders: {
    readonly trees: string;
    /** A tree that was named by its file, wherever it is. */
    readonly treeFile?: string | undefined;
    /** Our own trees: their shop serves a folder that has none. */
    readonly shipped: string;
    /** `given`: said on the command line, so that a setting does not move it. `usual`: where nobody says any. */
    readonly sessions: { readonly path: string; readonly given: boolean; readonly usual: string };
    readonly settings: string;
    readonly roots: PathRoots;
  };
  /** Writes the account of a session; returns the path of what was written, and the parts kept as edited. */
  readonly writeAccount: (
    session: string,
  ) => Promise<Parsed<{ readonly path: string; readonly kept: readonly string[] }>>;
  /** Begins to think about the next step, where that is not the search itself. */
  readonly startAdvice?: typeof startAdvice;
  /** The address that a telephone reaches this machine by, where the network's own is not meant; and what opens a page there. */
  readonly phone?: { readonly host?: string | undefined; readonly open?: typeof openPhone };
  readonly redraw: () => void;
  /** Rings the bell of the terminal. */
  readonly ring: () => void;
  readonly leave: () => void;
  /** Takes what the disk would not keep, to be told when the screens are gone. */
  readonly handOver: (rescued: Rescued) => void;
};

/** Answers that the disk of the sessions refused: whole in another folder, or as the lines that are not kept. */
export type Rescued =
  | { readonly kind: 'elsewhere'; readonly path: string }
  | { readonly kind: 'lines'; readonly lines: readonly string[] };
