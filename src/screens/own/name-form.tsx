import { Box } from 'ink';
import {
  fieldAt,
  fieldsOf,
  kinds,
  type NamedField,
  type NamedThing,
  type NameForm,
  type OfferedCheck,
} from '../../app/pages/own/form.ts';
import { TextField } from '../field.tsx';
import { Choices, Line } from '../parts.tsx';

type Asked = { readonly ask: string; readonly hint: string };

const empty = 'May stay empty.';
const questions: Readonly<Record<NamedThing, Readonly<Partial<Record<NamedField, Asked>>>>> = {
  test: {
    what: {
      ask: 'What do you try, to make it happen?',
      hint: 'A thing: "the wipers on a wet windshield". The same proves the repair.',
    },
    bad: { ask: 'What does it show while it is bad?', hint: `"They stop half way." ${empty}` },
    good: {
      ask: 'And what when it is good?',
      hint: `"They sweep the whole glass", or a band: "11 V or more". ${empty}`,
    },
  },
  check: {
    what: {
      ask: 'What is to be checked?',
      hint: 'A thing: "the wiper park switch". Down: a check of the library.',
    },
    does: { ask: 'How?', hint: '' },
    good: {
      ask: 'What does a healthy one show?',
      hint: `A band with its unit judges the reading: "11 V or more", "0.2 to 0.4 ohm". ${empty}`,
    },
  },
  cause: {
    name: {
      ask: 'What is wrong?',
      hint: 'The part and what it has: "the wiper ground, rusted through".',
    },
    where: { ask: 'Where does it sit?', hint: `"Under the cowl, left." ${empty}` },
  },
};

const titles: Readonly<Record<NamedThing, string>> = {
  test: "THE COMPLAINT'S OWN TEST",
  check: 'A CHECK OF YOUR OWN',
  cause: 'WHAT YOU FOUND WRONG',
};

type NameFormProps = {
  readonly form: NameForm;
  readonly offered: readonly OfferedCheck[];
  readonly rows: number;
  readonly columns: number;
};

/** One question at a time; what has been answered stands above it. */
export function NameFormBody({ form, offered, rows, columns }: NameFormProps) {
  const asked = questions[form.names];
  const field = fieldAt(form);
  const { ask = '', hint = '' } = (field && asked[field]) ?? {};
  const before = fieldsOf(form).slice(0, form.at);
  return (
    <Box flexDirection="column" paddingX={1}>
      <Line as="title">{titles[form.names]}</Line>
      {before.map((one) => (
        <Line key={one} as="quiet">
          {`${asked[one]?.ask ?? ''}  ${form.answers[one] || '-'}`}
        </Line>
      ))}
      <Box flexDirection="column" paddingTop={1}>
        <Line as="title">{ask}</Line>
        {field === 'does' ? (
          <Choices choices={kinds} cursor={form.cursor} rows={kinds.length} />
        ) : (
          <>
            <TextField typed={form.typed} columns={columns} rows={2} />
            <Line wrap="fold">{hint}</Line>
          </>
        )}
        {offered.length === 0 ? null : (
          <Choices
            choices={offered.map(({ tree, check, label }) => ({ id: `${tree} ${check}`, label }))}
            cursor={form.cursor}
            rows={Math.max(2, rows - 7)}
            numbered={false}
          />
        )}
      </Box>
    </Box>
  );
}
