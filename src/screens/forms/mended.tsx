import type { At, MendedField } from '../../app/screen.ts';
import { forms } from '../../app/typing/form.ts';
import { currentLeg, type Story } from '../../core/session/story.ts';
import { FormBody } from './rows.tsx';

const labels: Readonly<Record<MendedField, string>> = {
  did: 'What was done',
  minutes: 'Minutes of work',
  parts: 'Parts',
  cost: 'Cost in all',
};

const hints: Readonly<Record<MendedField, string>> = {
  did: 'In your own words.',
  minutes: 'Such as 40, or 1:20. Empty: the account has only the clock.',
  parts:
    '2 x fuse link at 3.50 EUR; tape (spare). A price with its currency; none if there were none.',
  cost: 'Parts and all, with its currency: 12.40 EUR. What is no amount is kept and not counted.',
};

/** What was done in a repair: each field may stay empty. */
export function MendedBody({ story, screen }: { story: Story; screen: At<'mended'> }) {
  const { n, at, fields } = screen;
  const cause = story.repairs.find((one) => one.n === n)?.cause ?? '';
  const name = currentLeg(story).tree.causes[cause]?.name ?? cause;
  return (
    <FormBody
      title={`REPAIRED, and recorded: ${name}`}
      about="What of it shall be told? What stays empty is told as not noted; Esc leaves all."
      rows={forms.mended.map((field) => ({
        label: labels[field],
        typed: fields[field],
        hint: hints[field],
      }))}
      at={at}
    />
  );
}
