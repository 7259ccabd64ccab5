import { Box } from 'ink';
import {
  choicesShown,
  fields,
  notKnown,
  somethingElse,
  type Field,
  type Offered,
  type StartForm,
} from '../app/pages/start-form.ts';
import { figureOf } from '../app/pages/start-book.ts';
import { question } from '../app/pages/start-words.ts';
import { fromYourJobs } from '../core/tree/counted/words.ts';
import type { Library } from '../core/tree/shop.ts';
import { TextField } from './field.tsx';
import { Choices, Line, Narrowed, firstShown } from './parts.tsx';
import { endless } from './plain/no-window.ts';

type StartProps = {
  readonly form: StartForm;
  readonly offered: Offered;
  /** What past jobs of the chosen vehicle left to do, and the jobs. */
  readonly past: readonly string[];
  readonly rows: number;
  readonly columns: number;
  readonly units: 'us' | 'metric';
};

/** Lines of past jobs at most: the rest stands on the vehicle's own page. */
const mostPast = 4;

/** One question at a time; what has been answered stands above it. */
export function StartBody({ form, offered, past, rows, columns, units }: StartProps) {
  const { library } = offered;
  const all = fields(form, offered);
  const field = all[form.at];
  const chosen = library.trees.find(({ id }) => id === form.answers['tree']);
  const counted = form.at > 0 && chosen !== undefined ? fromYourJobs(chosen) : undefined;
  const told = past.slice(0, Math.max(0, Math.min(mostPast, rows - 11)));
  // The answers above give way first when there is little room; without a window they were just said.
  const above = rows === endless ? 0 : Math.max(0, rows - 8 - told.length);
  const shown = all.slice(Math.max(0, form.at - above), form.at);
  return (
    <Box flexDirection="column" paddingX={1}>
      {told.map((line) => (
        <Line key={line} as="caution">
          {line}
        </Line>
      ))}
      {counted === undefined ? null : <Line as="quiet">{`Odds and minutes: ${counted}.`}</Line>}
      {form.begins === 'leg' && chosen !== undefined ? (
        <Line as="quiet">{`On to: ${chosen.title}`}</Line>
      ) : null}
      {shown.map((one) => (
        <Line key={one.id} as="quiet">
          {`${question(one, library)}  ${answerWords(one, form.answers[one.id] ?? '')}`}
        </Line>
      ))}
      {field === undefined ? null : (
        <Box flexDirection="column" paddingTop={shown.length > 0 ? 1 : 0}>
          <Line as="title">{`${place(form, all.length)}${question(field, library)}`}</Line>
          {field.kind === 'text' ? (
            <>
              <TextField typed={form.typed} columns={columns} rows={3} />
              <Line>{hint(field.id, units, library)}</Line>
            </>
          ) : (
            <>
              <Narrowed sought={form.sought} left={choicesShown(field, form).length} />
              <LastKept
                choices={choicesShown(field, form)}
                cursor={form.cursor}
                rows={Math.max(3, rows - told.length - shown.length - (form.sought === '' ? 2 : 3))}
              />
            </>
          )}
        </Box>
      )}
    </Box>
  );
}

type LastKeptProps = {
  readonly choices: ReturnType<typeof choicesShown>;
  readonly cursor: number;
  readonly rows: number;
};

/** A list whose last line, for what no tree is about, is in sight wherever the cursor stands. */
function LastKept({ choices, cursor, rows }: LastKeptProps) {
  const last = choices.at(-1);
  const cut = last?.id === somethingElse && choices.length > rows && cursor < choices.length - 1;
  const others = choices.length - 1;
  const unseen = others - firstShown(others, cursor, rows - 1) - (rows - 1);
  const more = unseen > 0 ? ` (${unseen} more above)` : '';
  return (
    <>
      <Choices
        choices={cut ? choices.slice(0, -1) : choices}
        cursor={cursor}
        rows={cut ? rows - 1 : rows}
      />
      {cut ? <Line>{`   End  ${last.label}${more}`}</Line> : null}
    </>
  );
}

/** How far along; how many questions there are is known once the complaint is. */
const place = ({ at, begins }: StartForm, of: number): string =>
  at === 0 && begins !== 'leg' ? '' : `${at + 1} of ${of}  `;

function answerWords(field: Field, answer: string): string {
  if (field.kind === 'text') return answer === '' ? '-' : answer;
  return field.choices.find(({ id }) => id === answer)?.label ?? (answer || notKnown);
}

type TextId = Extract<Field, { kind: 'text' }>['id'];

function hint(id: TextId, units: 'us' | 'metric', { shop }: Library): string {
  const figure = figureOf(id, 'book');
  if (figure !== undefined)
    return `In ${shop.book[figure]?.unit ?? ''} unless you type the unit. Empty: the general figure counts.`;
  if (figureOf(id, 'where') !== undefined) return 'Book and page, or a plate. May stay empty.';
  if (id === 'own') return 'As the owner says it: "The wipers stop half way when it rains."';
  if (id === 'vehicle') return 'A name of your own, such as "Orchard van". No plate, no owner.';
  if (id === 'said') return 'In their own words; the account will have them. May stay empty.';
  if (id === 'who') return 'Initials will do. May stay empty.';
  const unit = id === 'altitude' ? { us: 'ft', metric: 'm' } : { us: 'F', metric: 'C' };
  return `In ${unit[units]} unless you type the unit. Readings are judged by it. May stay empty.`;
}
