import { Head, Line } from '../parts.tsx';

type ListHeadProps = {
  readonly title: string;
  /** What is so, over the lines. */
  readonly facts: readonly string[];
};

/** What stands over a list of the walk: its title, and what must be known to choose. */
export const ListHead = ({ title, facts }: ListHeadProps) => (
  <Head>
    <Line as="title">{title}</Line>
    {facts.map((fact) => (
      <Line key={fact} wrap="fold">
        {fact}
      </Line>
    ))}
  </Head>
);
