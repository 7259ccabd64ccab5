import * as z from 'zod';
import { Written } from '../tree/written/written.ts';
import { EventLine } from './event.ts';
import { Header } from './header.ts';

const made = 'Generated from the models in src/core by "npm run schema"; change those, not this.';

/** JSON Schema of a tree file, for editors that complete and check while one types. */
export const treeSchema = (): object => ({
  ...z.toJSONSchema(Written, { io: 'input' }),
  title: 'Droplight symptom tree, format 2',
  description: made,
});

/** JSON Schema of one line of a session file: the header, or an event. */
export const sessionSchema = (): object => ({
  ...z.toJSONSchema(z.union([Header, EventLine]), { io: 'input' }),
  title: 'One line of a Droplight session file, format 1',
  description: made,
});
