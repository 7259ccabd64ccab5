import { setTimeout as sleep } from 'node:timers/promises';
import type { Message } from '../../app/message.ts';
import type { Program } from '../../app/program.ts';
import type { Rescued } from '../../app/run/ports.ts';
import { timerLine } from '../../app/timed.ts';
import { showProblem, firstOf, type Parsed } from '../../core/problem.ts';
import { cleanRow } from '../../core/text.ts';
import { version } from '../../core/version.ts';
import type { Contents } from '../../screens/contents.tsx';
import { endless } from '../../screens/plain/no-window.ts';
import type { Io } from '../io.ts';
import { Patience } from './patience.ts';
import { Teller } from './teller.ts';
import { cursorOn, meantBy } from './typed-line.ts';

/** How often time goes on while nobody types, in milliseconds: timers are looked at. */
const tick = 15_000;

/** Nobody reads a question and answers it in so many milliseconds: such a line was typed before it. */
const tooSoon = 50;

const greeting = `Droplight ${version}, line by line. Type an answer, then Enter. ?: all that can be said.`;

/** A line that came, and whether it was there before its question had been read. */
type Came = { readonly line: Parsed<string>; readonly early: boolean };

/** Question and line, in turn, until somebody leaves or the lines end. */
export class Talk {
  readonly #io: Io;
  readonly #teller: Teller;
  readonly #patience = new Patience();
  #left = false;
  #rang = false;
  /** A line is being taken: what comes of it is told when it is through. */
  #busy = true;
  /** What the last line asked to be told beside the news. */
  #asked: readonly string[] = [];
  rescued: Rescued | undefined;

  constructor(io: Io) {
    this.#io = io;
    this.#teller = new Teller(io.columns);
  }

  /** What the program has of a terminal here: nothing is drawn, and a bell is said. */
  readonly hands = {
    around: this.#patience.around,
    startAdvice: this.#patience.startAdvice,
    redraw: () => {},
    ring: () => {
      this.#rang = true;
    },
    leave: () => {
      this.#left = true;
    },
    handOver: (rescued: Rescued) => {
      this.rescued = rescued;
    },
  };

  async hold(program: Program, contents: Contents): Promise<void> {
    const lines = this.#io.lines()[Symbol.asyncIterator]();
    const ticking = setInterval(() => program.dispatch({ kind: 'ticked' }), tick);
    const unsubscribe = program.subscribe(() => this.#meanwhile(program, contents));
    this.#say(this.#teller.fold(greeting));
    try {
      await this.#patience.settled(program);
      while (!this.#left) {
        this.#tell(program);
        const came = await this.#next(program, contents, lines);
        if (came !== undefined) this.#take(program, came);
        else {
          this.#io.out('\n');
          this.leave(program);
        }
        await this.#patience.settled(program);
      }
    } finally {
      unsubscribe();
      clearInterval(ticking);
      program.shut();
      await lines.return?.();
    }
  }

  /** Puts the job down as Ctrl+C does on the screens; a disk that refuses has it handed over. */
  leave({ dispatch }: Program): void {
    this.#busy = true;
    for (let times = 0; times < 2 && !this.#left; times += 1) {
      dispatch({ kind: 'line-begun' });
      dispatch({ kind: 'key', token: 'C-c' });
    }
  }

  /** The next line; undefined once there is none. Only what was told before it counts as seen. */
  async #next(
    program: Program,
    contents: Contents,
    lines: AsyncIterator<Parsed<string>>,
  ): Promise<Came | undefined> {
    const coming = lines.next();
    const early =
      this.#io.isTyped && (await Promise.race([coming.then(() => true), sleep(tooSoon, false)]));
    if (!early) this.#seen(program, contents);
    this.#busy = false;
    this.#patience.hold();
    const { done, value } = await coming;
    this.#busy = true;
    if (done === true) return undefined;
    // The answers stand in what is told, whoever gave them.
    if (!this.#io.isTyped && value.kind === 'good') this.#io.out(`${cleanRow(value.value)}\n`);
    return { line: value, early };
  }

  #seen({ state, dispatch }: Program, contents: Contents): void {
    const { question } = state();
    const size = { rows: endless, columns: this.#io.columns() };
    const cautions = contents.cautions(state(), size);
    dispatch({ kind: 'drawn', drawn: { kind: 'page', question, whole: true, cautions, size: '' } });
  }

  #take(program: Program, { line, early }: Came): void {
    if (line.kind === 'bad') {
      this.#asked = this.#teller.fold(showProblem(firstOf(line.problems)));
      return this.#patience.letGo(program);
    }
    if (!early) program.dispatch({ kind: 'line-begun' });
    this.#answer(program, line.value);
    return this.#patience.letGo(program);
  }

  #answer(program: Program, line: string): void {
    const meant = meantBy(line, program.state());
    switch (meant.kind) {
      case 'anew':
        for (const message of meant.messages) program.dispatch(message);
        return this.#answer(program, line);
      case 'say-again':
        this.#asked = this.#teller.again(program.state());
        return undefined;
      case 'say-ways':
        this.#asked = this.#teller.ways(program.state());
        return undefined;
      case 'unknown':
        this.#asked = this.#teller.notTaken(line, program.state());
        return undefined;
      case 'picked':
        for (const message of meant.moves) program.dispatch(message);
        if (cursorOn(program.state().screen) === meant.line)
          return this.#strike(program, line, meant.keys);
        this.#asked = this.#teller.notTaken(line, program.state());
        return undefined;
      case 'struck':
        return this.#strike(program, line, meant.messages);
    }
  }

  /** Strikes keys; where nothing came of them, that is said. */
  #strike({ state, dispatch }: Program, line: string, messages: readonly Message[]): void {
    for (const message of messages) dispatch(message);
    if (!this.#left && !this.#teller.hasNews(state()))
      this.#asked = this.#teller.notTaken(line, state());
  }

  /** What comes up while nobody has typed: a timer that ran out, a photo, a replay that goes on. */
  #meanwhile(program: Program, contents: Contents): void {
    if (this.#busy || (!this.#rang && !this.#teller.hasNews(program.state()))) return;
    this.#say(['']);
    this.#tell(program);
    this.#seen(program, contents);
  }

  #tell({ state }: Program): void {
    const rung = this.#rang ? this.#teller.fold(timerLine(state())) : [];
    const said = [...rung, ...this.#asked, ...this.#teller.tell(state())];
    this.#rang = false;
    this.#asked = [];
    this.#say(said);
    this.#io.out('> ');
  }

  #say(lines: readonly string[]): void {
    if (lines.length > 0) this.#io.out(`${lines.join('\n')}\n`);
  }
}
