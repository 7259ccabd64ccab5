import type { Tell } from '../../problem.ts';
import { hazards, standingHazards } from './hazard-words.ts';
import { refusals, refusedIn } from './refused-words.ts';
import { lintTouching } from './touching.ts';
import type { Standing, Tree } from '../model.ts';

type Work = {
  readonly path: string;
  readonly texts: readonly (readonly [path: string, text: string])[];
  readonly cautions: readonly string[];
  readonly standing: Standing;
};

/** Checks and repairs with work that nothing makes safe, or that can hurt without a caution that fits. */
export function lintHazards(tree: Tree, tell: Tell): void {
  for (const work of worksOf(tree)) {
    lintRefused(work, tell);
    lintWords(work, tell);
    lintTouching(work, tell);
    for (const { name, cautions } of standingHazards(work.standing))
      if (!cautions.some((id) => work.cautions.includes(id)))
        tell(uncautioned({ path: `${work.path}.standing`, word: name, name, cautions }, work));
  }
}

function lintRefused(work: Work, tell: Tell): void {
  for (const refusal of refusals)
    for (const [path, text] of work.texts) {
      const value = refusedIn(refusal, text);
      if (value !== undefined)
        tell({
          code: 'hazard-refused',
          path,
          value,
          message: `This tells somebody to do what no caution makes safe (${refusal.name}). ${refusal.why}`,
          mend: 'Take it out. A warning against it may stand: begin the sentence with "Never".',
        });
    }
}

/** One problem a hazard: the first text that speaks of it. */
function lintWords(work: Work, tell: Tell): void {
  for (const { name, words, cautions } of hazards) {
    if (cautions.some((id) => work.cautions.includes(id))) continue;
    const spoken = work.texts.find(([, text]) => words.test(text));
    if (spoken === undefined) continue;
    const word = words.exec(spoken[1])?.[0] ?? name;
    tell(uncautioned({ path: spoken[0], word, name, cautions }, work));
  }
}

type Spoken = {
  readonly path: string;
  readonly word: string;
  readonly name: string;
  readonly cautions: readonly string[];
};

const uncautioned = ({ path, word, name, cautions }: Spoken, work: Work) => ({
  code: 'hazard-without-caution',
  path,
  value: word,
  message: `This work has to do with a hazard (${name}), and no caution fits it.`,
  mend: `Add to ${work.path}.cautions one of: ${cautions.join(', ')}. If the words hurt nobody here, say it otherwise.`,
});

function worksOf(tree: Tree): readonly Work[] {
  const checks = Object.entries(tree.checks).map(([id, check]): Work => {
    const path = `checks.${id}`;
    return {
      path,
      texts: [
        [`${path}.ask`, check.ask],
        ...check.how.map((step, index) => [`${path}.how[${index}]`, step] as const),
        ...check.results.map(
          ({ label }, index) => [`${path}.results[${index}].label`, label] as const,
        ),
      ],
      cautions: check.cautions,
      standing: check.standing,
    };
  });
  const repairs = Object.entries(tree.causes).map(([id, { repair }]): Work => {
    const path = `causes.${id}.repair`;
    return {
      path,
      texts: repair.do.map((step, index) => [`${path}.do[${index}]`, step] as const),
      cautions: repair.cautions,
      standing: repair.standing,
    };
  });
  return [...checks, ...repairs];
}
