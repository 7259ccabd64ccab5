import type { ExitCode, Io } from './io.ts';

type Command = (io: Io, args: readonly string[]) => Promise<ExitCode>;

/** Every command but the screens, by the word that calls it; each is loaded when it is called. */
export const commands: Readonly<Record<string, () => Promise<Command>>> = {
  advise: async () => (await import('./advise.ts')).advise,
  enter: async () => (await import('./enter.ts')).enter,
  feed: async () => (await import('./feed.ts')).feed,
  figure: async () => (await import('./figure.ts')).figure,
  open: async () => (await import('./open.ts')).open,
  review: async () => (await import('./review.ts')).review,
  sessions: async () => (await import('./sessions.ts')).sessions,
  story: async () => (await import('./story.ts')).story,
  trees: async () => (await import('./trees/trees.ts')).trees,
  verify: async () => (await import('./verify.ts')).verify,
  write: async () => (await import('./write.ts')).write,
};
