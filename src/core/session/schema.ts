import * as z from 'zod';
import { EventLine } from './event.ts';
import { Header } from './header/header.ts';

const made = 'Generated from the models in src/core by "npm run schema"; change those, not this.';

/** JSON Schema of one line of a session file: the header, or an event. */
export const sessionSchema = (): object => ({
  ...z.toJSONSchema(z.union([Header, EventLine]), { io: 'input' }),
  title: 'One line of a Droplight session file, format 1',
  description: made,
});
