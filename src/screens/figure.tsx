import type { FigurePage } from '../app/pages/figure-page.ts';
import { textOf } from '../app/typing/typing.ts';
import { shownTyping } from './field.tsx';
import { Head, Line } from './parts.tsx';

type FigureProps = { readonly page: FigurePage; readonly at: number; readonly rows: number };

/** One trade figure: its inputs to be typed, then what it comes to, by what formula and source. */
export function FigureBody({ page, at, rows }: FigureProps) {
  const { name, about, fields, result, formula } = page;
  const from = Math.max(0, at - Math.max(1, rows - 6));
  return (
    <Head>
      <Line as="title">{`${name.replaceAll('-', ' ')}: ${about}`}</Line>
      {result.length === 0
        ? fields.slice(from).map((field, index) => (
            <Line key={field.key} as={index + from === at ? 'marked' : 'plain'}>
              {fieldWords(field, index + from === at)}
            </Line>
          ))
        : result.map((line) => (
            <Line key={line} wrap="fold">
              {line}
            </Line>
          ))}
      <Line wrap="fold">{`Formula: ${formula}`}</Line>
    </Head>
  );
}

const fieldWords = (field: FigurePage['fields'][number], active: boolean): string =>
  `${active ? `> ${shownTyping(field.typed)}` : `  ${textOf(field.typed)}`} ${unitWords(field)}   ${field.ask}${fromJob(field)}`;

/** The unit that counts when none is typed; a unit that was typed stands there already. */
const unitWords = ({ typed, unit }: FigurePage['fields'][number]): string =>
  /[a-z%]$/i.test(textOf(typed).trim()) ? '' : unit;

const fromJob = ({ typed, known }: FigurePage['fields'][number]): string =>
  known !== undefined && textOf(typed) === known ? ' (from the job)' : '';
