import type { Library } from '../../core/tree/shop.ts';
import { figureOf } from './start-book.ts';
import { knownVehicle, type Field } from './start-form.ts';

const plainQuestions: Readonly<Record<string, string>> = {
  own: 'What is the complaint, in your own words?',
  said: 'What does its owner say of it?',
  vehicle: 'What do you call the vehicle?',
  who: 'Who is doing the work?',
  altitude: 'Height above sea level here?',
  temperature: 'Air temperature?',
};

/** What a question asks, for the screen. */
export function question(field: Field, library: Library): string {
  if (field.id === 'tree') return 'What is the complaint?';
  if (field.id === knownVehicle) return 'Which vehicle?';
  if (field.id === 'about') return 'What is it about?';
  if (field.kind === 'choice') return library.shop.facts[field.id]?.ask ?? field.id;
  const figure = figureOf(field.id, 'book');
  if (figure !== undefined) return `${library.shop.book[figure]?.name ?? figure}, by its own book?`;
  if (figureOf(field.id, 'where') !== undefined) return 'Where was that read?';
  return plainQuestions[field.id] ?? field.id;
}
