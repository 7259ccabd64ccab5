import { cleanRow } from '../text.ts';

/** Text as it may stand in an XML document, in an element or a quoted attribute. */
export const escapeXml = (text: string): string =>
  cleanRow(text)
    // Code points that XML 1.0 leaves out of its characters (W3C, section 2.2, production 2).
    .replace(/[\ufffe\uffff]/g, '\ufffd')
    .replace(/&/g, '&amp;')
    .replace(/</g, '&lt;')
    .replace(/>/g, '&gt;')
    .replace(/"/g, '&quot;');

type Attributes = Readonly<Record<string, string | number | undefined>>;

const rounded = (value: number): string => String(Math.round(value * 100) / 100);

function attributesOf(attributes: Attributes): string {
  return Object.entries(attributes)
    .map(([name, value]) => {
      if (value === undefined) return '';
      return ` ${name}="${typeof value === 'number' ? rounded(value) : escapeXml(value)}"`;
    })
    .join('');
}

/** One element; what stands inside is markup already. */
export const element = (name: string, attributes: Attributes, inside = ''): string =>
  inside === ''
    ? `<${name}${attributesOf(attributes)}/>`
    : `<${name}${attributesOf(attributes)}>${inside}</${name}>`;

/** A circle about a place. */
export const circleAt = (x: number, y: number, radius: number, attributes: Attributes): string =>
  element('circle', { cx: x, cy: y, r: radius, ...attributes });

/** A rectangle: its left and upper edge, its width and height. */
export const boxAt = (
  [x, y, width, height]: readonly [number, number, number, number],
  attributes: Attributes,
): string => element('rect', { x, y, width, height, ...attributes });

/** A line of text at a place. */
export const textAt = (x: number, y: number, text: string, attributes: Attributes = {}): string =>
  element('text', { x, y, ...attributes }, escapeXml(text));
