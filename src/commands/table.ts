import { advise } from './advise.ts';
import { enter } from './enter.ts';
import { feed } from './feed.ts';
import { figure } from './figure.ts';
import { open } from './open.ts';
import { review } from './review.ts';
import { sessions } from './sessions.ts';
import { story } from './story.ts';
import { trees } from './trees.ts';
import { verify } from './verify.ts';
import { write } from './write.ts';
import type { ExitCode, Io } from './io.ts';

/** Every command but the screens, by the word that calls it. */
export const commands: Readonly<
  Record<string, (io: Io, args: readonly string[]) => Promise<ExitCode>>
> = { advise, enter, feed, figure, open, review, sessions, story, trees, verify, write };
