import type { At, PhotoField } from '../../app/screen.ts';
import { forms } from '../../app/typing/form.ts';
import { textOf } from '../../app/typing/typing.ts';
import type { DueOnScreen } from '../../app/walk/question.ts';
import { shownTyping } from '../field.tsx';
import { Head, Indented, Line } from '../parts.tsx';

const labels: Readonly<Record<PhotoField, string>> = { path: 'Its path', caption: 'Caption' };

const hints: Readonly<Record<PhotoField, string>> = {
  path: 'Type it, paste it, or drop the file on this window. JPEG, PNG, WebP or GIF, 20 MB at most.',
  caption: 'What it shows. Empty: told as not noted.',
};

/** What the step behind the page asks or names. */
const stepWords = (due: DueOnScreen | undefined): string =>
  due?.asked?.check.ask ?? due?.cause?.cause.name ?? 'the job as a whole';

type PhotoProps = { readonly screen: At<'photo'>; readonly due: DueOnScreen | undefined };

/** A photo by its path, and what it shows. */
export function PhotoBody({ screen: { at, fields }, due }: PhotoProps) {
  const active = forms.photo[at] ?? 'path';
  return (
    <>
      <Head>
        <Line as="title" wrap="fold">{`PHOTO of: ${stepWords(due)}`}</Line>
        <Line wrap="fold">It is copied beside the session, and shown in the account.</Line>
      </Head>
      {forms.photo.map((field) => (
        <Indented
          key={field}
          mark={`${field === active ? '>' : ' '} ${labels[field].padEnd(9)}`}
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
