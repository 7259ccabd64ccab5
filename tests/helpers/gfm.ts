import { fromMarkdown } from 'mdast-util-from-markdown';
import { gfmFromMarkdown } from 'mdast-util-gfm';
import { gfm } from 'micromark-extension-gfm';

/** What this looks at of a node that a general markdown library reads. */
export type Node = {
  readonly type: string;
  readonly url?: string | undefined;
  readonly alt?: string | null | undefined;
  readonly value?: string | undefined;
  readonly lang?: string | null | undefined;
  readonly children?: readonly Node[];
};

export const parseGfm = (markdown: string): Node =>
  fromMarkdown(markdown, { extensions: [gfm()], mdastExtensions: [gfmFromMarkdown()] });

export const allNodes = (node: Node): readonly Node[] => [
  node,
  ...(node.children ?? []).flatMap(allNodes),
];

export const typesOf = (node: Node): readonly string[] => allNodes(node).map(({ type }) => type);

export const textOf = (node: Node): string =>
  allNodes(node)
    .map(({ value }) => value ?? '')
    .join('');

export const rawOf = (node: Node): readonly Node[] =>
  allNodes(node).filter(({ type }) => type === 'html');

export const linksOf = (node: Node): readonly { type: string; url: string; alt: string }[] =>
  allNodes(node).flatMap(({ type, url, alt }) =>
    url === undefined ? [] : [{ type, url, alt: alt ?? '' }],
  );

/** Cells of each row, table by table. */
export const tablesOf = (node: Node): readonly (readonly number[])[] =>
  allNodes(node)
    .filter(({ type }) => type === 'table')
    .map(({ children = [] }) => children.map((row) => row.children?.length ?? 0));

/** Where links inside the document can lead: headings as GitHub names them (rule from memory). */
export function anchorsOf(node: Node): readonly string[] {
  const seen = new Map<string, number>();
  return allNodes(node)
    .filter(({ type }) => type === 'heading')
    .map((heading) => {
      const slug = textOf(heading)
        .toLowerCase()
        .replace(/[^\p{L}\p{M}\p{N}\p{Pc}\- ]/gu, '')
        .replaceAll(' ', '-');
      const times = seen.get(slug) ?? 0;
      seen.set(slug, times + 1);
      return `#${encodeURI(times === 0 ? slug : `${slug}-${times}`)}`;
    });
}
