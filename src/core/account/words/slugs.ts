import { cleanLine } from '../../text.ts';
import type { Block } from '../block.ts';

/**
 * The anchors that GitHub gives to headings: small letters, marks dropped, blanks to hyphens, and
 * a number on a repeated one. The rule as GitHub's own documentation words it under "Section
 * links"; from memory.
 */
export function headingSlugs(blocks: readonly Block[]): readonly string[] {
  const seen = new Map<string, number>();
  return blocks.flatMap((block) => {
    if (block.kind !== 'title' && block.kind !== 'heading') return [];
    const slug = cleanLine(block.text)
      .toLowerCase()
      .replace(/[^\p{L}\p{M}\p{N}\p{Pc}\- ]/gu, '')
      .replaceAll(' ', '-');
    const before = seen.get(slug);
    seen.set(slug, (before ?? 0) + 1);
    return [before === undefined ? slug : `${slug}-${before}`];
  });
}
