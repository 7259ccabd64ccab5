import { allNodes, parseGfm, textOf, type Node } from './gfm.ts';

/** The story of an account: its paragraphs between the heading of the story and the next one. */
export function storyOf(markdown: string): readonly string[] {
  const children = parseGfm(markdown).children ?? [];
  const from = children.findIndex((node) => isHeading(node) && textOf(node) === 'How it went');
  const rest = children.slice(from + 1);
  const until = rest.findIndex(isHeading);
  return rest
    .slice(0, until < 0 ? rest.length : until)
    .filter(({ type, children: parts = [] }) => type === 'paragraph' && parts.some(isText))
    .filter((node) => allNodes(node).every(({ type }) => type !== 'image'))
    .map(textOf);
}

const isHeading = ({ type }: Node): boolean => type === 'heading';
const isText = ({ type }: Node): boolean => type === 'text';

/** Verbs that a caution or a step begins with; a story that begins a sentence so gives orders. */
const orders =
  /^(?:Look|Check|Take|Put|Set|Measure|Turn|Read|Remove|Try|Open|Close|Crank|Start|Pull|Push|Clamp|Do not|Never|Make|Use|Go)\b/;

/** What an editor would strike out of a story, each with the words it stands in; empty for a good one. */
export function storyFaults(paragraphs: readonly string[], ids: readonly string[] = []): string[] {
  return paragraphs.flatMap((paragraph) => {
    // What people said is theirs.
    const own = paragraph.replace(/"[^"]*"/g, '"..."');
    const sentences = own.split(/(?<=[.!?])(?:\)|")?\s+/);
    const starts = sentences.map((text) => text.split(/[\s,:;]+/)[0] ?? '');
    const told = sentences.flatMap((text, index) => [
      ...(text.includes('?') ? [`asks: ${text}`] : []),
      ...(orders.test(text) ? [`orders: ${text}`] : []),
      ...(/^(?:It|This|That)\b/.test(text) ? [`bare subject: ${text}`] : []),
      ...(/^[a-z]/.test(text) && index > 0 ? [`begins small: ${text}`] : []),
      ...(index > 1 && starts[index - 1] === starts[index] && starts[index - 2] === starts[index]
        ? [`three begin alike: ${text}`]
        : []),
    ]);
    return [
      ...told,
      ...(/cleared \S+ of \S+ suspects/.test(own) ? [`running total: ${own}`] : []),
      ...(/undefined|NaN| {2}|\.\.(?!\.)|: \.|\(\)|,,| \.| ,/.test(own.replaceAll('"..."', 'x'))
        ? [`marks: ${own}`]
        : []),
      ...ids
        .filter((id) => id.includes('-') && new RegExp(`(?<![\\w-])${id}(?![\\w-])`).test(own))
        .map((id) => `raw id ${id}: ${own}`),
      ...(inferences(sentences) > 1 ? [`more than one inference: ${own}`] : []),
    ];
  });
}

/** Sentences that tell what the suspects came to. */
const inferences = (sentences: readonly string[]): number =>
  sentences.filter((text) =>
    /\b(?:overtook|took the lead|rose from|now spoke for|ruled out|fitted well any more)\b/.test(
      text,
    ),
  ).length;
