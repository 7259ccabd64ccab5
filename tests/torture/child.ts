// A process that is told what to do a line at a time, so that it has started long before it is needed:
// `write PATH MOST NAME` keeps notes as fast as it can and says each that is kept, `open FOLDER` begins a
// session and says its path.
import { writeSync } from 'node:fs';
import { nodeFiles } from '../../src/store/node-files.ts';
import { createSession, openSession } from '../../src/store/sessions.ts';
import { linesOf } from '../../src/store/lines.ts';
import { note } from '../helpers/session-file.ts';
import { headerFor } from '../helpers/story.ts';

const say = (words: string): void => void writeSync(1, `${words}\n`);

function write(path: string, most: number, name: string): void {
  const opened = openSession({ files: nodeFiles, holder: name }, path, {
    kept: () => {},
    trouble: () => {},
  });
  if (opened.kind === 'bad') return say(`refused ${opened.problems[0]?.code ?? ''}`);
  const { journal, recovered, release } = opened.value;
  let n = recovered.events.at(-1)?.n ?? 0;
  try {
    for (let count = 0; count < most; count += 1) {
      n += 1;
      journal.commit([note(n, `${name} ${n}`)]);
      say(`kept ${name} ${n}`);
    }
  } catch (error) {
    say(`stopped ${String(error)}`);
  }
  release();
  return say('done');
}

function open(folder: string): void {
  try {
    say(`made ${createSession({ files: nodeFiles, holder: 'torture' }, folder, headerFor())}`);
  } catch (error) {
    say(`refused ${String(error)}`);
  }
}

say('ready');
for await (const line of linesOf(process.stdin, 'standard input')) {
  const [what, path = '', most = '', name = ''] = line.kind === 'good' ? line.value.split(' ') : [];
  if (what === 'open') open(path);
  else write(path, Number(most), name);
}
