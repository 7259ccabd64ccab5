// One writer: opens the session it is given, keeps notes as fast as it can and says each that is kept.
import { writeSync } from 'node:fs';
import { nodeFiles } from '../../src/store/node-files.ts';
import { openSession } from '../../src/store/sessions.ts';
import { note } from '../helpers/session-file.ts';

const [path = '', most = '1000000', name = 'x'] = process.argv.slice(2);
const opened = openSession({ files: nodeFiles, holder: name }, path, {
  kept: () => {},
  trouble: () => {},
});
if (opened.kind === 'bad') {
  writeSync(1, `refused ${opened.problems[0]?.code ?? ''}\n`);
} else {
  const { journal, recovered, release } = opened.value;
  let n = recovered.events.at(-1)?.n ?? 0;
  try {
    for (let count = 0; count < Number(most); count += 1) {
      n += 1;
      journal.commit([note(n, `${name} ${n}`)]);
      writeSync(1, `kept ${name} ${n}\n`);
    }
  } catch (error) {
    writeSync(1, `stopped ${String(error)}\n`);
  }
  release();
}
