/** Why chances of suspects may come to more than the whole. */
export const moreThanOne =
  'More than one thing can be wrong at once, so these figures need not add up to 100 %.';
