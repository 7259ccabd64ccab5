import type { At, MendedField } from '../app/screen.ts';
import { mendedFields } from '../app/typing/mended-fields.ts';
import { textOf } from '../app/typing/typing.ts';
import { currentLeg, type Story } from '../core/session/story.ts';
import { shownTyping } from './field.tsx';
import { Head, Indented, Line } from './parts.tsx';

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
  const active = mendedFields[at] ?? 'did';
  return (
    <>
      <Head>
        <Line as="title" wrap="fold">{`REPAIRED, and recorded: ${name}`}</Line>
        <Line wrap="fold">
          What of it shall be told? What stays empty is told as not noted; Esc leaves all.
        </Line>
      </Head>
      {mendedFields.map((field) => (
        <Indented
          key={field}
          mark={`${field === active ? '>' : ' '} ${labels[field].padEnd(15)}`}
          as={field === active ? 'marked' : 'plain'}
        >
          {field === active ? shownTyping(fields[field]) : textOf(fields[field]) || '-'}
        </Indented>
      ))}
      <Head>
        <Line wrap="fold">{hints[active]}</Line>
      </Head>
    </>
  );
}
