import { textOf, type Typing } from '../../app/typing/typing.ts';
import { shownTyping } from '../field.tsx';
import { Head, Indented, Line } from '../parts.tsx';

/** One field of a form: its name on the page, what is typed, and a word that helps. */
type FormRow = { readonly label: string; readonly typed: Typing; readonly hint: string };

type FormProps = {
  readonly title: string;
  readonly about: string;
  readonly rows: readonly FormRow[];
  readonly at: number;
};

/** A form of several fields, the one with the cursor marked, its word below. */
export const FormBody = ({ title, about, rows, at }: FormProps) => (
  <>
    <Head>
      <Line as="title" wrap="fold">
        {title}
      </Line>
      <Line wrap="fold">{about}</Line>
    </Head>
    {rows.map(({ label, typed }, index) => (
      <Indented
        key={label}
        mark={`${index === at ? '>' : ' '} ${label.padEnd(15)}`}
        as={index === at ? 'marked' : 'plain'}
      >
        {index === at ? shownTyping(typed) : textOf(typed) || '-'}
      </Indented>
    ))}
    <Head>
      <Line wrap="fold">{rows[at]?.hint ?? ''}</Line>
    </Head>
  </>
);
