import type { Wanted } from './options.ts';

/** What the words behind a command name, where names are known: a shell completes them. */
export type Named = 'tree' | 'session' | 'figure' | 'command' | 'verb' | 'file' | readonly string[];

/** How a command is called. The parser, the help, the completion and the list in src/guide/commands.md read this. */
export type Use = {
  /** Its words and options, behind `droplight`. */
  readonly use: string;
  readonly does: string;
  readonly options: Wanted;
  /** A call that does something, whole. */
  readonly example: string;
  readonly words?: Named;
  /** The values that an option takes, by its name; the first is meant where it is left out. */
  readonly values?: Readonly<Record<string, readonly string[]>>;
};

/** Commands that draw the screens. */
export const screenUses = {
  start: {
    use: 'start [TREE] [--plain]',
    does: 'a new job on the screens; --plain: line by line',
    options: { plain: 'flag' },
    example: 'droplight start no-supply',
    words: 'tree',
  },
  resume: {
    use: 'resume [SESSION] [--plain]',
    does: 'pick a session up (the newest, if none is named)',
    options: { plain: 'flag' },
    example: 'droplight resume',
    words: 'session',
  },
  replay: {
    use: 'replay SESSION [--plain | --as text|cast]',
    does: 'watch a session again, decision by decision; --as: to read, or to play in a terminal',
    options: { plain: 'flag', as: 'text' },
    example: 'droplight replay SESSION --as text',
    words: 'session',
    values: { as: ['text', 'cast'] },
  },
} as const satisfies Readonly<Record<string, Use>>;

/** Commands without screens, in the order in which help tells them. */
export const uses = {
  sessions: {
    use: 'sessions [--json]',
    does: 'list the sessions, the newest first',
    options: { json: 'flag' },
    example: 'droplight sessions',
  },
  open: {
    use: 'open (TREE | --own "WORDS" [--about GROUP]) --vehicle TEXT [--who T] [--altitude 5200ft] [--temperature 70F] [--facts a=b,c=d] [--sheet "figure=18inHg (where);..."] [--json]',
    does: 'begin a job without screens, by a tree or in your own words; prints the path of its file',
    options: {
      own: 'text',
      about: 'text',
      vehicle: 'text',
      who: 'text',
      altitude: 'text',
      temperature: 'text',
      facts: 'text',
      sheet: 'text',
      json: 'flag',
    },
    example: 'droplight open no-supply --vehicle "Orchard van"',
    words: 'tree',
  },
  practice: {
    use: 'practice (TREE [--seed TEXT] [--hard] [--cause ID]... [--facts a=b,c=d] | --set FILE --number K) [--who T] [--json], practice set TREE --count N --out FILE [--name TEXT], practice compare SESSION... [--as md|json|csv]',
    does: 'a hidden fault to find: it is revealed at the end; sets for a class, and their answers side by side',
    options: {
      seed: 'text',
      hard: 'flag',
      cause: 'texts',
      facts: 'text',
      set: 'text',
      number: 'text',
      who: 'text',
      json: 'flag',
      count: 'text',
      name: 'text',
      out: 'text',
      as: 'text',
    },
    example: 'droplight practice no-supply --hard',
    words: 'tree',
    values: { as: ['md', 'json', 'csv'] },
  },
  vehicles: {
    use: 'vehicles [show NAME | new NAME LINE=TEXT... | edit NAME LINE=TEXT... | done NAME SESSION N] [--json]',
    does: 'what is known of each vehicle, to read and to write',
    options: { json: 'flag' },
    example: 'droplight vehicles show "Orchard van"',
    words: ['show', 'new', 'edit', 'done'],
  },
  enter: {
    use: 'enter SESSION < actions.jsonl',
    does: 'actions as JSON lines on standard input, one answer a line',
    options: {},
    example: `echo '{"do":"note","text":"rain"}' | droplight enter SESSION`,
    words: 'session',
  },
  story: {
    use: 'story SESSION --json',
    does: 'the state of a session',
    options: { json: 'flag' },
    example: 'droplight story SESSION --json',
    words: 'session',
  },
  write: {
    use: 'write SESSION [--as md|html|text] [--length line|short|full] [--out DIR] [--voice i|we|they] [--for shop|reader|mentor] [--front-matter] [--no-pictures] [--png] [--force]',
    does: 'the account, with pictures; --length line prints the job in one line',
    options: {
      as: 'text',
      length: 'text',
      out: 'text',
      voice: 'text',
      for: 'text',
      'front-matter': 'flag',
      'no-pictures': 'flag',
      png: 'flag',
      force: 'flag',
    },
    example: 'droplight write SESSION --voice i --as html --out account',
    words: 'session',
    values: {
      as: ['md', 'html', 'text'],
      length: ['full', 'short', 'line'],
      voice: ['we', 'i', 'they'],
      for: ['shop', 'mentor', 'reader'],
    },
  },
  review: {
    use: 'review SESSION... [--as md|html|csv|json] [--json]',
    does: 'the decisions worth talking about, and how each skill goes from job to job',
    options: { as: 'text', json: 'flag' },
    example: 'droplight review SESSION --as html > review.html',
    words: 'session',
    values: { as: ['md', 'html', 'csv', 'json'] },
  },
  verify: {
    use: 'verify SESSION... [--against LINK] [--json]',
    does: 'whole, line ends changed, torn, cut short, altered or newer; against a link: is all that it held then still there',
    options: { json: 'flag', against: 'text' },
    example: 'droplight verify SESSION',
    words: 'session',
  },
  history: {
    use: 'history [TREE | WORDS] [--afresh] [--json]',
    does: 'what each complaint turned out to be over all jobs, minutes that checks took, repairs that did not help; --afresh: every session read anew',
    options: { afresh: 'flag', json: 'flag' },
    example: 'droplight history no-supply',
    words: 'tree',
  },
  records: {
    use: 'records --out DIR [--force] [--json]',
    does: 'all sessions as tables (jobs, findings, decisions, repairs, minutes), each as Parquet and as JSON Lines; --force: over those that are there',
    options: { out: 'text', force: 'flag', json: 'flag' },
    example: 'droplight records --out tables',
  },
  trees: {
    use: 'trees [VERB]',
    does: 'the trees: list, check, draw, plan, write and more ("droplight trees help")',
    options: {},
    example: 'droplight trees list',
    words: 'verb',
  },
  advise: {
    use: 'advise SESSION [--json]',
    does: 'the suspects, the best next steps and what waits for evidence',
    options: { json: 'flag' },
    example: 'droplight advise SESSION',
    words: 'session',
  },
  feed: {
    use: 'feed TREE [--facts a=b,c=d] [--with CAUSE=OHMS]... [--load NAME]... [--json | --netlist]',
    does: 'the feed path, solved; --with again: faults at once, =OHMS may be left out; no --load: as the complaint shows, --load none: nothing on; --facts: what the vehicle has',
    options: { facts: 'text', with: 'texts', load: 'texts', json: 'flag', netlist: 'flag' },
    example: 'droplight feed no-supply --with bulkhead=0.4',
    words: 'tree',
  },
  figure: {
    use: 'figure [NAME] [key=value]... [--json]',
    does: 'trade figures: list, explain, work out',
    options: { json: 'flag' },
    example: 'droplight figure dwell-from-gap',
    words: 'figure',
  },
  help: {
    use: 'help [COMMAND | all | keys]',
    does: 'how a command is called, with an example; how all are; what every key does',
    options: {},
    example: 'droplight help write',
    words: 'command',
  },
  completion: {
    use: 'completion SHELL',
    does: 'what a shell (bash, zsh or fish) needs to complete what is typed',
    options: {},
    example: 'source <(droplight completion bash)',
    words: ['bash', 'zsh', 'fish'],
  },
} as const satisfies Readonly<Record<string, Use>>;

export type CommandName = keyof typeof uses;

/** The whole call of a command, for who called it otherwise. */
export const callOf = (name: CommandName): string => `droplight ${uses[name].use}`;
