// Writes the JSON Schemas that lie beside the trees, from the models in src/core and the ids in shop.json.
import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { sessionSchema } from '../src/core/session/schema.ts';
import { trusted } from '../src/core/problem.ts';
import { parseShop } from '../src/core/tree/parse.ts';
import { treeSchema } from '../src/core/tree/schema/tree-schema.ts';
import { root } from './setup.mjs';

const file = join(root, 'trees', 'shop.json');
const shop = trusted(parseShop(readFileSync(file, 'utf8'), file));

for (const [name, schema] of [
  ['tree', treeSchema(shop)],
  ['session', sessionSchema()],
])
  writeFileSync(join(root, 'trees', `${name}.schema.json`), `${JSON.stringify(schema, null, 2)}\n`);
