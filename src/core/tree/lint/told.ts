import type { Tell } from '../../problem.ts';
import type { Tree } from '../model.ts';

/** Words with which an instruction begins: they would stand in the account as an order. */
const imperative =
  /^(ask|check|clean|connect|crank|disconnect|drain|fit|keep|lift|listen|look|make|measure|open|press|pull|push|put|read|remove|renew|replace|run|see|set|start|stop|take|test|touch|try|turn|use|watch)\b/i;

/** Told forms are sentences' parts: no question, no colon, no order, no list of "or". */
export function lintTold(tree: Tree, tell: Tell): void {
  for (const [path, text] of toldForms(tree)) {
    const fault = faultIn(text, path.endsWith('.told') && path.includes('.results['));
    if (fault !== undefined)
      tell({
        code: 'told-form',
        path,
        value: text,
        message: `The told form ${fault}.`,
        mend: path.includes('.results[')
          ? 'Say what was found as a past phrase: "there was none", "{reading} was read".'
          : 'Say it as the name of a thing: "the spark at a plug lead".',
      });
  }
}

function faultIn(text: string, phrase: boolean): string | undefined {
  if (text.includes('?')) return 'asks a question';
  if (text.includes(':')) return 'has a colon';
  if (/[.!]$/.test(text)) return 'ends like a sentence';
  if (/,.*\bor\b|\bor\b.*\bor\b/.test(text)) return 'lists with "or"';
  if (imperative.test(text)) return 'gives an order';
  if (!phrase && !/^(the|a|an|how|what|whether|where|which) /.test(text))
    return 'is no name of a thing (it begins with neither "the" nor "a")';
  return undefined;
}

function toldForms(tree: Tree): readonly (readonly [path: string, text: string])[] {
  const some = (path: string, text: string | undefined) =>
    text === undefined ? [] : [[path, text] as const];
  return [
    ...Object.entries(tree.causes).flatMap(([id, { short }]) => some(`causes.${id}.short`, short)),
    ...Object.entries(tree.checks).flatMap(([id, { told, results }]) => [
      ...some(`checks.${id}.told`, told),
      ...results.flatMap((result, index) =>
        some(`checks.${id}.results[${index}].told`, result.told),
      ),
    ]),
  ];
}
