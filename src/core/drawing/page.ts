import { fitLine } from './fit-text.ts';
import { boxAt, escapeXml, textAt } from './xml.ts';

/** Every picture is as wide as a column of text. */
export const pageWidth = 600;

/**
 * One set of colors on a panel of its own, so that a picture reads the same on a light page and on
 * a dark one. Contrast with the panel, by the formula of WCAG 2.2: ink 16.0, faint 5.3, fault 7.1, line 3.4.
 */
export const ink = '#16202c';
export const faint = '#5d6b79';
/** What loses too much. */
export const fault = '#a3271c';
export const line = '#7d8b99';
export const panel = '#fdfcf8';
export const tint = '#e9eef2';
/** The ground of what is proved: like no other one. */
export const proven = '#c9cdd1';

const face = "Helvetica, Arial, 'DejaVu Sans', sans-serif";

export type Page = {
  readonly title: string;
  /** What the picture shows, for somebody who cannot see it. */
  readonly description: string;
  readonly height: number;
  readonly defs?: string;
};

/** A whole SVG document around its parts, its title in their first line. The class tells our own pictures from other files. */
export function showPage(
  { title, description, height, defs = '' }: Page,
  parts: readonly string[],
): string {
  const size = `width="${pageWidth}" height="${Math.ceil(height)}" viewBox="0 0 ${pageWidth} ${Math.ceil(height)}"`;
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" class="droplight" ${size} role="img" aria-labelledby="title desc">`,
    `<title id="title">${escapeXml(title)}</title>`,
    `<desc id="desc">${escapeXml(description)}</desc>`,
    ...(defs === '' ? [] : [`<defs>${defs}</defs>`]),
    boxAt([0.5, 0.5, pageWidth - 1, Math.ceil(height) - 1], { rx: 8, fill: panel, stroke: line }),
    `<g font-family="${face}" font-size="12" fill="${ink}">`,
    textAt(18, 28, fitLine(title, 564, 14, 'bold'), { 'font-size': 14, 'font-weight': 'bold' }),
    ...parts,
    '</g>',
    '</svg>',
    '',
  ].join('\n');
}
