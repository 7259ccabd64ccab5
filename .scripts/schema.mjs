// Writes the JSON Schemas that lie beside the trees, from the models in src/core.
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { sessionSchema, treeSchema } from '../src/core/session/schema.ts';
import { root } from './setup.mjs';

for (const [name, schema] of [
  ['tree', treeSchema()],
  ['session', sessionSchema()],
])
  writeFileSync(join(root, 'trees', `${name}.schema.json`), `${JSON.stringify(schema, null, 2)}\n`);
