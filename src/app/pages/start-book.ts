import type { TypedFigure } from '../../core/session/book.ts';
import type { StartForm } from './start-form.ts';

/** The figures of the vehicle's own book as they were typed. */
export function typedSheet({ answers }: StartForm): Readonly<Record<string, TypedFigure>> {
  const ids = Object.keys(answers).flatMap((id) => figureOf(id, 'book') ?? []);
  return Object.fromEntries(
    ids.map((id) => [
      id,
      { reading: answers[`book:${id}`] ?? '', where: answers[`where:${id}`] ?? '' },
    ]),
  );
}

/** The book figure that a question is about. */
export const figureOf = (id: string, about: 'book' | 'where'): string | undefined =>
  id.startsWith(`${about}:`) ? id.slice(about.length + 1) : undefined;
