import type { Tell } from '../../problem.ts';
import { findFigure } from '../../trade/catalog.ts';
import { findUnit, unitNames } from '../../trade/units/units.ts';
import type { Check } from '../model.ts';
import { judgeWords } from '../shapes.ts';
import { listInput, severalOf, type Several } from '../several.ts';

/** What is wrong with the several readings of a check, and with how they are judged. */
export function checkReadings(check: Check, path: string, tell: Tell): void {
  const { readings, judge, reading } = check;
  if ((readings === undefined) !== (judge === undefined) || (readings && reading === undefined))
    tell({
      code: 'readings-without-judge',
      path: `${path}.readings`,
      message: 'Several readings need "judge", and "reading" for what they are judged as.',
      mend: 'Give all three, or "reading" alone.',
    });
  for (const [index, one] of (readings ?? []).entries())
    if (findUnit(one.quantity, one.unit) === undefined)
      tell({
        code: 'unknown-unit',
        path: `${path}.readings[${index}].unit`,
        value: one.unit,
        message: `"${one.unit}" is no unit of ${one.quantity}.`,
        mend: `Use one of: ${unitNames(one.quantity).join(', ')}.`,
      });
  if (check.each !== undefined && readings?.length !== 1)
    tell({
      code: 'each-of-one',
      path: `${path}.each`,
      message: 'A reading for each cylinder wants exactly one entry in "readings".',
      mend: 'Give one entry: it stands for every cylinder.',
    });
  const several = severalOf(check);
  if (several !== undefined) checkJudge(several, check.each !== undefined, path, tell);
}

function checkJudge(several: Several, isEach: boolean, path: string, tell: Tell): void {
  const { reading, judge, readings } = several;
  const [first, ...others] = readings;
  if (others.some(({ quantity, unit }) => quantity !== first.quantity || unit !== first.unit))
    tell({
      code: 'readings-differ',
      path: `${path}.readings`,
      message: 'The readings of one check differ in quantity or unit.',
      mend: 'Measure one thing in one unit; another belongs to a check of its own.',
    });
  if (judge === 'difference' && (readings.length !== 2 || isEach))
    tell({
      code: 'difference-of-two',
      path: `${path}.readings`,
      message: 'A difference is the first of two readings less the second.',
      mend: 'Give two readings, or judge their "spread".',
    });
  if (!fits(several))
    tell({
      code: 'judge-unfit',
      path: `${path}.judge`,
      value: judge,
      message: `"${judge}" makes no ${reading.quantity} of these readings.`,
      mend: `Use ${judgeWords.join(', ')} (a ratio), or a figure that a list of readings is enough for.`,
    });
}

/** Whether the readings can be judged so, and what is judged has the quantity that comes of it. */
function fits({ reading, judge, readings: [first] }: Several): boolean {
  if (judge === 'share') return reading.quantity === 'ratio';
  if (judgeWords.some((word) => word === judge)) return reading.quantity === first.quantity;
  const figure = findFigure(judge);
  const list = figure && listInput(figure);
  return (
    list?.gives !== undefined &&
    list.quantity === first.quantity &&
    findUnit(reading.quantity, list.gives) !== undefined
  );
}
