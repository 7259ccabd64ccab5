import { escapeXml } from '../../drawing/xml.ts';
import { never } from '../../problem.ts';
import type { Block, Words } from '../block.ts';
import { headingSlugs } from '../words/slugs.ts';
import { htmlStyle } from './html-style.ts';

/** What the page shows of a picture by its file: a data address, so that nothing is fetched. */
export type SourceOf = (file: string) => string | undefined;

/**
 * The account as one page: pictures inside, no script, nothing fetched. All text is escaped, and the page's
 * own policy forbids whatever else could be in it.
 */
export function showHtml(blocks: readonly Block[], sourceOf: SourceOf): string {
  const slugs = headingSlugs(blocks);
  const heads = blocks.flatMap((block, index) =>
    block.kind === 'title' || block.kind === 'heading' ? [index] : [],
  );
  const idOf = (index: number): string => slugs[heads.indexOf(index)] ?? '';
  const title = blocks.find(({ kind }) => kind === 'title');
  const name = title?.kind === 'title' ? title.text : 'A repair account';
  const body = blocks.map((block, index) => showBlock(block, idOf(index), sourceOf));
  return `<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="${policy}">
<meta name="viewport" content="width=device-width, initial-scale=1">
<meta name="color-scheme" content="light dark">
<title>${escapeXml(name)}</title>
<style>${htmlStyle}</style>
</head>
<body>
<main>
${body.filter((part) => part !== '').join('\n')}
</main>
</body>
</html>
`;
}

/** Nothing but the page's own style and the pictures that are in it (W3C Content Security Policy 3). */
const policy =
  "default-src 'none'; img-src data:; style-src 'unsafe-inline'; base-uri 'none'; form-action 'none'";

function showBlock(block: Block, id: string, sourceOf: SourceOf): string {
  switch (block.kind) {
    case 'title':
      return `<h1 id="${escapeXml(id)}">${escapeXml(block.text)}</h1>`;
    case 'heading':
      return `<h${block.level} id="${escapeXml(id)}">${escapeXml(block.text)}</h${block.level}>`;
    case 'paragraph':
      return `<p>${showWords(block.text)}</p>`;
    case 'list': {
      const items = block.items.map((item) => `<li>${showWords(item)}</li>`).join('\n');
      return block.numbered ? `<ol>\n${items}\n</ol>` : `<ul>\n${items}\n</ul>`;
    }
    case 'table':
      return showTable(block);
    case 'warning':
      return `<aside class="caution" role="note"><strong>Caution: ${escapeXml(block.name)}.</strong> ${escapeXml(block.text)}</aside>`;
    case 'quote':
      return `<blockquote>${block.lines.map(escapeXml).join('<br>\n')}</blockquote>`;
    case 'margin':
      return `<aside class="margin" role="note">${showWords(block.text)}</aside>`;
    case 'picture':
      return showPicture(block, sourceOf);
    case 'chart':
      // The source of a chart tells a reader nothing.
      return '';
    default:
      return never(block);
  }
}

function showPicture(
  { file, caption }: Extract<Block, { kind: 'picture' }>,
  sourceOf: SourceOf,
): string {
  const source = sourceOf(file);
  const image =
    source === undefined ? '' : `<img src="${escapeXml(source)}" alt="${escapeXml(caption)}">`;
  return `<figure>${image}<figcaption>${escapeXml(caption)}</figcaption></figure>`;
}

/** A table that scrolls by itself where the page is narrow. */
function showTable({ head, rows }: Extract<Block, { kind: 'table' }>): string {
  const top = head.map((cell) => `<th scope="col">${escapeXml(cell)}</th>`).join('');
  const lines = rows.map(
    (row) => `<tr>${row.map((cell) => `<td>${escapeXml(cell)}</td>`).join('')}</tr>`,
  );
  return `<div class="table" tabindex="0"><table>\n<thead><tr>${top}</tr></thead>\n<tbody>\n${lines.join('\n')}\n</tbody>\n</table></div>`;
}

function showWords(words: Words): string {
  if (typeof words === 'string') return escapeXml(words);
  return words
    .map((part) =>
      typeof part === 'string'
        ? escapeXml(part)
        : `<a href="#${escapeXml(encodeURI(part.to))}">${escapeXml(part.text)}</a>`,
    )
    .join('');
}
