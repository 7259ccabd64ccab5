import type { Binding } from './binding.ts';
import { fieldBindings } from './field.ts';
import { pageBindings } from './page.ts';
import { walkBindings } from './walk.ts';

/** All keys, in the order in which the foot line shows them. The first that fits counts. */
export const bindings: readonly Binding[] = [...fieldBindings, ...walkBindings, ...pageBindings];
