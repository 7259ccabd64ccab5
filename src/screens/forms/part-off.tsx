import type { At, PartField } from '../../app/screen.ts';
import { forms } from '../../app/typing/form.ts';
import { nextBag } from '../../core/session/apart/apart.ts';
import type { Story } from '../../core/session/story.ts';
import { FormBody } from './rows.tsx';

const labels: Readonly<Record<PartField, string>> = {
  part: 'Part',
  where: 'Where it lies',
  fasteners: 'What held it',
  routing: 'Hoses, wires',
  bag: 'Bag',
};

const hints: Readonly<Record<Exclude<PartField, 'bag'>, string>> = {
  part: 'Such as carburetor, or left rear wheel. A plus before it: put on for a while (+ jumper).',
  where: 'On the vehicle or on the bench: where to look for it.',
  fasteners: 'Count, kind and size, which went where: 4 nuts 1/2, long one at the back.',
  routing: 'Which went where, by their tags; how they ran.',
};

/** A part that came off: each field but its name may stay empty. */
export function PartOffBody({ story, screen }: { story: Story; screen: At<'part-off'> }) {
  const { at, fields } = screen;
  const bagHint = `Bag ${nextBag(story)} is the next of this job: write it on the bag. Enter keeps; none: no bag.`;
  return (
    <FormBody
      title="OFF THE VEHICLE"
      about="Enter goes from field to field and keeps after the last. All but the name may stay empty."
      rows={forms['part-off'].map((field) => ({
        label: labels[field],
        typed: fields[field],
        hint: field === 'bag' ? bagHint : hints[field],
      }))}
      at={at}
    />
  );
}
