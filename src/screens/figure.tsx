import { choicesLeft, type FigureField, type FigurePage } from '../app/pages/figure-page.ts';
import { textOf } from '../app/typing/typing.ts';
import { shownTyping } from './field.tsx';
import { Head, Line } from './parts.tsx';
import { endless } from './plain/no-window.ts';
import { allRowsOf, rowsOf, type Needs } from './room.ts';

type FigureProps = {
  readonly page: FigurePage;
  readonly at: number;
  readonly rows: number;
  readonly columns: number;
};

/** One trade figure: its inputs to be typed, then what it comes to, by what formula and source. */
export function FigureBody({ page, at, rows, columns }: FigureProps) {
  const width = columns - 2;
  const title = `${page.name.replaceAll('-', ' ')}: ${page.about}`;
  const formula = `Formula: ${page.formula}`;
  const room = rows - rowsOf(title, width);
  const worked = page.result.length > 0;
  const asked = worked ? [] : askedBelow(page.fields[at], { rows: room - 1, columns });
  const shown = worked ? [] : fieldsAround(page.fields, at, room - allRowsOf(asked, width));
  const free = room - allRowsOf(asked, width) - shown.length;
  const told = worked
    ? readFrom([...page.result, formula], at, { rows: free, width })
    : [...asked, ...(free >= rowsOf(formula, width) ? [formula] : [])];
  return (
    <Head>
      <Line as="title" wrap="fold">
        {title}
      </Line>
      {shown.map(({ field, active }) => (
        <Line key={field.key} as={active ? 'marked' : 'plain'}>
          {fieldWords(field, active)}
        </Line>
      ))}
      {told.map((line) => (
        <Line key={line} wrap="fold">
          {line}
        </Line>
      ))}
    </Head>
  );
}

/** A result asks for all its rows: the foot gives way to it. */
export const figureNeeds = ({ result, fields, about }: FigurePage, columns: number): Needs => ({
  least: 1,
  wanted: 2 + allRowsOf([about, ...result], columns - 2) + (result.length > 0 ? 0 : fields.length),
});

/** The lines from one on for which there is room, each whole; the last row says where the others are. */
function readFrom(
  lines: readonly string[],
  from: number,
  { rows, width }: { readonly rows: number; readonly width: number },
): readonly string[] {
  const rest = lines.slice(from);
  if (allRowsOf(rest, width) <= rows) return rest;
  const fitting = rest.findIndex((_, index) => allRowsOf(rest.slice(0, index + 1), width) >= rows);
  const shown = rest.slice(0, Math.max(1, fitting));
  return [...shown, `… down: read on (${rest.length - shown.length} more)`];
}

type Shown = { readonly field: FigureField; readonly active: boolean };

/** The fields for which there is room, that of the cursor among them. */
function fieldsAround(fields: readonly FigureField[], at: number, room: number): readonly Shown[] {
  const most = Math.max(1, room);
  const from = Math.max(0, Math.min(at - Math.floor(most / 2), fields.length - most));
  return fields.map((field, index) => ({ field, active: index === at })).slice(from, from + most);
}

/** The words that the marked field may be, and before them what it asks, where its row cuts it and there is room. */
function askedBelow(
  field: FigureField | undefined,
  { rows, columns }: { readonly rows: number; readonly columns: number },
): readonly string[] {
  if (field === undefined) return [];
  const left = choicesLeft(field);
  const choices = left.length === 0 ? [] : [`One of: ${left.join(', ')}.`];
  const cut = rows !== endless && rowsOf(fieldWords(field, true), columns - 2) > 1;
  const all = cut ? [field.ask, ...choices] : choices;
  return allRowsOf(all, columns - 2) <= rows ? all : choices;
}

const fieldWords = (field: FigureField, active: boolean): string =>
  `${active ? `> ${shownTyping(field.typed)}` : `  ${textOf(field.typed)}`} ${unitWords(field)}   ${field.ask}${fromJob(field)}`;

/** The unit that counts when none is typed; a unit that was typed stands there already. */
const unitWords = ({ typed, unit }: FigureField): string =>
  /[a-z%]$/i.test(textOf(typed).trim()) ? '' : unit;

const fromJob = ({ typed, known }: FigureField): string =>
  known !== undefined && textOf(typed) === known ? ' (from the job)' : '';
