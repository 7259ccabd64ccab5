// Writes the list of commands of its page anew from the table that the parser reads.
import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { everyCall } from '../src/commands/help.ts';
import { root } from './setup.mjs';

const file = join(root, 'src/guide/commands.md');
const text = readFileSync(file, 'utf8');
const from = text.indexOf('```\ndroplight') + 4;
writeFileSync(file, text.slice(0, from) + everyCall() + text.slice(text.indexOf('```', from)));
