// npm test: sets up on the first run, then everything that CI runs: the check, but for its coverage floors.
import { join } from 'node:path';
import { install, installReferences, root, run } from './setup.mjs';

install();
installReferences();
process.exit(run([join(root, '.scripts', 'check.mjs'), '--without-coverage']));
