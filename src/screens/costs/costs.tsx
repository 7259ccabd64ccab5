import { Box } from 'ink';
import { costFacts, costLines } from '../../app/pages/costs.ts';
import type { At } from '../../app/screen.ts';
import type { Story } from '../../core/session/story.ts';
import { shownTyping } from '../field.tsx';
import { Choices, Head, Line } from '../parts.tsx';
import { allRowsOf } from '../room.ts';

type CostsProps = {
  readonly story: Story;
  readonly screen: At<'costs'>;
  readonly rows: number;
  readonly columns: number;
};

/** What the job takes: the sums, what can be noted, and every part. */
export function CostsBody({ story, screen, rows, columns }: CostsProps) {
  const facts = costFacts(story);
  const lines = costLines(story);
  const choices = lines.map(({ words }, at) => ({
    id: `${at}`,
    label:
      at === screen.cursor && screen.typed !== undefined
        ? `${words.replace(/(?<=:) .*$/, '')} ${shownTyping(screen.typed)}`
        : words,
  }));
  return (
    <Box flexDirection="column">
      <Head>
        <Line as="title">WHAT IT TAKES, as far as it was entered</Line>
        {facts.map((fact) => (
          <Line key={fact} wrap="fold">
            {fact}
          </Line>
        ))}
      </Head>
      <Choices
        choices={choices}
        cursor={screen.cursor}
        rows={rows - 3 - allRowsOf(facts, columns - 2)}
      />
      <Head>
        <Line wrap="fold">{lines[screen.cursor]?.about ?? ''}</Line>
      </Head>
    </Box>
  );
}
