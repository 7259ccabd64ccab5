import { proseMarkdown } from '../account/forms/markdown.ts';
import { folded } from '../drawing/tree-page.ts';
import { escapeXml } from '../drawing/xml.ts';
import { cleanLine } from '../text.ts';
import type { Part } from './part.ts';

/** The page as lines of a terminal, at most 78 columns wide. */
export const asText = (parts: readonly Part[]): string => `${parts.map(textOf).join('\n\n')}\n`;

function textOf(part: Part): string {
  if (part.kind === 'say') return folded(cleanLine(part.text), 78).join('\n');
  if (part.kind === 'list')
    return part.items.flatMap((item) => folded(`- ${cleanLine(item)}`, 78, '  ')).join('\n');
  const text = cleanLine(part.text);
  if (part.level === 3) return text;
  return `${part.level === 1 ? text : text.toUpperCase()}\n${(part.level === 1 ? '=' : '-').repeat(Math.min(78, text.length))}`;
}

/** The page as GitHub's markdown. */
export const asMarkdown = (parts: readonly Part[]): string =>
  `${parts.map(markdownOf).join('\n\n')}\n`;

function markdownOf(part: Part): string {
  if (part.kind === 'heading') return `${'#'.repeat(part.level)} ${proseMarkdown(part.text)}`;
  if (part.kind === 'say') return proseMarkdown(part.text);
  return part.items.map((item) => `- ${proseMarkdown(item)}`).join('\n');
}

const style =
  'body{font:16px/1.5 sans-serif;max-width:44em;margin:2em auto;padding:0 1em}h3{margin-bottom:.2em}' +
  'li{margin:.2em 0}@media print{h3{break-after:avoid}li{break-inside:avoid}}' +
  '@media(prefers-color-scheme:dark){body{background:#111;color:#eee}}';

/** The page as one file for a browser, which prints well. */
export function asHtml(parts: readonly Part[]): string {
  const title = parts.find(({ kind }) => kind === 'heading');
  const named = title?.kind === 'heading' ? title.text : '';
  return [
    '<!doctype html>',
    `<html lang="en"><head><meta charset="utf-8"><meta name="viewport" content="width=device-width"><title>${escapeXml(named)}</title><style>${style}</style></head><body>`,
    ...parts.map(htmlOf),
    '</body></html>',
    '',
  ].join('\n');
}

function htmlOf(part: Part): string {
  if (part.kind === 'heading') return `<h${part.level}>${escapeXml(part.text)}</h${part.level}>`;
  if (part.kind === 'say') return `<p>${escapeXml(part.text)}</p>`;
  return `<ul>\n${part.items.map((item) => `<li>${escapeXml(item)}</li>`).join('\n')}\n</ul>`;
}
