import { spawnSync } from 'node:child_process';
import { rmSync, writeFileSync } from 'node:fs';
import { delimiter, dirname, join } from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { scratch } from '../helpers/commands.ts';
import { buildApart, runInTerminal } from '../helpers/pseudo-terminal.ts';

let program = '';
beforeAll(async () => {
  program = await buildApart();
}, 60_000);
afterAll(() => rmSync(dirname(dirname(program)), { recursive: true }));

/** How each shell is started bare, and given its completion. */
const shells = {
  bash: [['bash', '--norc'], 'source <(droplight completion bash)'],
  zsh: [['zsh', '-f'], 'autoload -U compinit; compinit -D; source <(droplight completion zsh)'],
  fish: [['fish'], 'droplight completion fish | source'],
} as const;

const isThere = (shell: string): boolean =>
  spawnSync(shell, ['--version'], { stdio: 'ignore' }).status === 0;

test.each(Object.entries(shells).filter(([shell]) => isThere(shell)))(
  '%s completes a verb, a tree and the value of an option',
  async (_, [started, setUp]) => {
    const folder = scratch();
    writeFileSync(
      join(folder, 'droplight'),
      `#!/bin/sh\nexec ${process.execPath} ${program} "$@"\n`,
      {
        mode: 0o755,
      },
    );
    const path = `${folder}${delimiter}${process.env['PATH'] ?? ''}`;
    const shown = runInTerminal(
      ['/usr/bin/env', `HOME=${folder}`, `PATH=${path}`, ...started],
      folder,
    );

    shown.type(`${setUp}; echo set-up\r`);
    await shown.until(/^set-up/m);
    for (const [typed, completed] of [
      ['trees dr', 'droplight trees draw'],
      ['start no-st', 'droplight start no-start'],
      ['write --length=sh', 'droplight write --length=short'],
      ['--sessions /nowhere rep', 'droplight --sessions /nowhere replay'],
    ] as const) {
      shown.type(`droplight ${typed}`);
      shown.type('\t');
      await shown.until(completed);
      shown.type('\u0003');
    }
    shown.type('exit\r');
    await shown.exited;
    expect(shown.screen()).not.toContain('not found');
  },
  90_000,
);
