/** Words in a field, parted where the next letter goes. */
export type Typing = { readonly before: string; readonly after: string };

/** Words to go on with: the next letter goes behind them. */
export const typing = (before = ''): Typing => ({ before, after: '' });

export const textOf = ({ before, after }: Typing): string => before + after;

export const isEmpty = (typed: Typing): boolean => textOf(typed).trim() === '';
