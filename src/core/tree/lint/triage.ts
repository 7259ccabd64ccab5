import type { Tell } from '../../problem.ts';
import type { Tree } from '../model.ts';
import { textsOf } from './texts.ts';

/** The caution of what is not to be driven: a complaint that bears it is sorted, never mended here. */
const notDriven = 'brake-stop';

/** Words that set a vehicle moving; "not to be driven" and "never driven" hold it. */
const driving =
  /\b(drives?|driving|test[- ]?(drive|run)|road[- ]?test|on the road again)\b|(?<!\b(not to be|never) )\bdriven\b/i;

/** A tree about what is not to be driven says that it only sorts, and tells nobody to drive. */
export function lintTriage(tree: Tree, tell: Tell): void {
  const confirm = tree.checks[tree.complaint.confirm];
  if (tree.triage === undefined && confirm?.cautions.includes(notDriven) === true)
    tell({
      code: 'no-triage',
      path: 'triage',
      message: `The complaint bears the caution "${notDriven}", and nothing says that this tree only sorts.`,
      mend: 'Say in "triage" why the vehicle goes to inspection: then nothing is closed as fixed.',
    });
  const sorts = tree.triage !== undefined || Object.values(tree.causes).some((one) => one.triage);
  if (!sorts && tree.id !== 'brakes') return;
  for (const [path, text] of [...textsOf(tree), ...roadSteps(tree)])
    if (driving.test(text))
      tell({
        code: 'brakes-drive',
        path,
        value: text,
        message: 'A tree that sorts for an inspection has the vehicle driven.',
        mend: 'Say what stops the vehicle from moving: trailer it, or mend it where it stands.',
      });
}

/** Steps that are made on the road, as the words for it. */
const roadSteps = ({ checks, causes }: Tree): readonly (readonly [string, string])[] =>
  [
    ...Object.entries(checks).map(([id, { standing }]) => [`checks.${id}`, standing] as const),
    ...Object.entries(causes).map(
      ([id, { repair }]) => [`causes.${id}.repair`, repair.standing] as const,
    ),
  ].flatMap(([path, { engine }]) =>
    engine === 'road' ? [[`${path}.standing.engine`, 'road test'] as const] : [],
  );
