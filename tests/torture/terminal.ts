import { execFileSync } from 'node:child_process';
import { copyFileSync, readFileSync, rmSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { begun } from '../helpers/begun.ts';
import { readBack } from '../helpers/session-file.ts';
import { buildApart, runInTerminal, runProgram, type Shown } from '../helpers/pseudo-terminal.ts';
import { sleep } from './children.ts';
import { chance, pick, type Size, type Tried } from './lib.ts';

/** What gives the terminal back: off the alternate screen, the cursor shown. */
const givenBack = ['\u001b[?1049l', '\u001b[?25h'] as const;

/** Exit codes by what ends the program; a kill that nobody can take hold of gives none of ours. */
const endings = { SIGTERM: 143, SIGHUP: 129, SIGINT: 130, key: 0, SIGKILL: undefined } as const;

/** Each attack on the built program ends with the folder of its build removed. */
async function withProgram<T>(job: (program: string) => Promise<T>): Promise<T> {
  const program = await buildApart();
  try {
    return await job(program);
  } finally {
    rmSync(dirname(dirname(program)), { recursive: true });
  }
}

/** A note by keys; done when the screen calls everything kept. */
async function keepNote(shown: Shown, text: string): Promise<void> {
  shown.strike('n');
  await shown.until('enter keep');
  shown.strike(text);
  await shown.until(text);
  shown.strike('\r');
  for (let tries = 0; tries < 400 && shown.screen().includes('enter keep'); tries += 1)
    await sleep(5);
  await shown.until(/kept \d\d:\d\d/);
}

/** The screens ended by a signal or a key at a random moment: what was kept is there, the terminal is given back. */
export const endingsOfScreens = ({ seed, count }: Size): Promise<Tried> =>
  withProgram(async (program) => {
    const random = chance(seed);
    const failures: string[] = [];
    const { folder, path: fresh } = await begun();
    let acknowledged = 0;
    for (let tries = 0; tries < count; tries += 1) {
      const path = join(folder, 'sessions', `${tries}.jsonl`);
      copyFileSync(fresh, path);
      const shown = runProgram(program, ['resume', path], folder);
      await shown.until('? keys');
      const notes = Array.from(
        { length: Math.floor(random() * 3) },
        (_, at) => `note ${tries} ${at}`,
      );
      for (const text of notes) await keepNote(shown, text);
      acknowledged += notes.length;
      const ending = pick(random, Object.keys(endings) as (keyof typeof endings)[]);
      await sleep(random() * 200);
      const before = shown.raw().length;
      if (ending === 'key') shown.strike('\u0003');
      else shown.kill(ending);
      const code = await shown.exited;
      const at = `try ${tries}, ${ending}`;
      const file = readFileSync(path, 'utf8');
      const lost = notes.filter((text) => !file.includes(`"text":"${text}"`));
      if (lost.length > 0) failures.push(`${at}: lost ${lost.join()}`);
      const { damage = ['unreadable'] } = readBack(file);
      if (damage.length > 0) failures.push(`${at}: ${damage.join()}`);
      if (endings[ending] === undefined) continue;
      if (code !== endings[ending]) failures.push(`${at}: exit code ${code}`);
      const tail = shown.raw().slice(before);
      if (!givenBack.every((sign) => tail.includes(sign)))
        failures.push(`${at}: the terminal is not given back`);
    }
    const seen = `${acknowledged} notes kept`;
    return { attack: 'screens ended by signals', tries: count, failures, seen };
  });

const stops = ['key', 'SIGTSTP', 'SIGSTOP'] as const;

/** The program that runs in this shell. */
const jobOf = ({ pid }: Shown): number =>
  Number(execFileSync('ps', ['-o', 'pid=', '--ppid', String(pid)], { encoding: 'utf8' }).trim());

/** Stopped by a key or by a signal and let go on: the shell has a sane terminal meanwhile, then keys work again. */
export const stopsOfScreens = ({ seed, count }: Size): Promise<Tried> =>
  withProgram(async (program) => {
    const random = chance(seed);
    const failures: string[] = [];
    const { folder } = await begun();
    const shell = runInTerminal(['bash', '--norc', '-i'], folder);
    await shell.until('bash');
    shell.strike(`PS1='READY> '; ${process.execPath} ${program}\r`);
    await shell.until('? keys');
    const job = jobOf(shell);
    for (let tries = 0; tries < count; tries += 1) {
      const how = pick(random, stops);
      const before = shell.raw().length;
      if (how === 'key') shell.strike('\u001a');
      else process.kill(job, how);
      await untilIn(shell, before, 'Stopped');
      await sleep(100);
      if (how !== 'SIGSTOP' && !givenBack.every((sign) => shell.raw().slice(before).includes(sign)))
        failures.push(`${tries}, ${how}: the terminal is not given back`);
      const asked = shell.raw().length;
      shell.strike('stty -a; echo so$((1+1))me\r');
      await untilIn(shell, asked, 'so2me');
      const settings = shell.raw().slice(asked);
      if (how !== 'SIGSTOP' && /-icanon|-echo /.test(settings))
        failures.push(`${tries}, ${how}: the shell's terminal is raw`);
      const back = shell.raw().length;
      shell.strike('fg\r');
      await untilIn(shell, back, 'DROPLIGHT');
      const pressed = shell.raw().length;
      shell.strike(tries % 2 === 0 ? '\u001b[B' : '\u001b[A');
      await untilIn(shell, pressed, '> ');
      if (shell.raw().slice(pressed).includes('^[['))
        failures.push(`${tries}, ${how}: keys are echoed, not taken`);
    }
    shell.strike('\u0003');
    shell.strike('exit\r');
    shell.kill('SIGHUP');
    await shell.exited;
    return { attack: 'stopped and let go on', tries: count, failures, seen: stops.join(', ') };
  });

/** Waits for words among the bytes behind a place. */
async function untilIn(shown: Shown, from: number, words: string): Promise<void> {
  for (let tries = 0; tries < 800; tries += 1) {
    if (shown.raw().slice(from).includes(words)) return;
    await sleep(25);
  }
  throw new Error(`never saw ${words} behind ${JSON.stringify(shown.raw().slice(from))}`);
}
