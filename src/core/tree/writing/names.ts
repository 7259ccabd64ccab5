import { reservedWords } from '../reserved.ts';

/** Words that say nothing about which thing is meant. */
const small = /^(a|an|the|is|are|does|do|at|of|on|in|it|its|to|while|and|or)$/;

/** An id made from a name, other than those that are taken; words that rows use are no ids. */
export function idFor(name: string, taken: Iterable<string>): string {
  const words = name
    .normalize('NFKD')
    .replace(/\p{M}/gu, '')
    .toLowerCase()
    .split(/[^a-z0-9]+/)
    .filter((word) => word !== '');
  const telling = words.filter((word) => !small.test(word));
  const id = (telling.length > 0 ? telling : words).slice(0, 4).join('-').slice(0, 40) || 'one';
  const used = new Set([...taken, ...reservedWords]);
  if (!used.has(id)) return id;
  for (let number = 2; ; number += 1) if (!used.has(`${id}-${number}`)) return `${id}-${number}`;
}
