import { asHtml, asMarkdown, asText } from '../../core/telling/forms.ts';
import { tellTree } from '../../core/telling/tell.ts';
import { done, type Ended, type Io } from '../io.ts';
import { openTree } from '../library.ts';
import { wrongUse, type Given } from '../options.ts';

const forms = { text: asText, md: asMarkdown, html: asHtml } as const;

/** `droplight trees tell TREE [--as text|md|html]`: a tree read back in sentences, to be signed. */
export function tellTrees(io: Io, given: Given, [id]: readonly string[]): Ended {
  const form = given.text('as') ?? 'text';
  if (id === undefined || !Object.hasOwn(forms, form))
    return wrongUse(
      'Reading back wants one tree, as text, md or html.',
      'droplight trees tell TREE [--as text|md|html]',
    );
  const opened = openTree(io, given, id);
  if (opened.kind === 'bad') return opened;
  const { tree, library } = opened.value;
  io.out(forms[form as keyof typeof forms](tellTree(tree, library.shop)));
  return done;
}
