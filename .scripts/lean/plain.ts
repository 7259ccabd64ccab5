const signs = String.raw` -~\u00a0-\u00ac\u00ae-\u02ff\u0391-\u03a1\u03a3-\u03a9\u03b1-\u03c9\u0410-\u044f\u2010-\u2027\u2030-\u205e\u20a0-\u20bf\u2150-\u215e\u2190-\u2193\u2200-\u22ff\u2500-\u25c9`;

const wide = new RegExp(`^[${signs}]*$`);
const apart = new RegExp(String.raw`^[\n\u001b${signs}]*$`);

/**
 * Whether a text has nothing but signs of one column each: ASCII, Latin, Greek, Cyrillic, and the marks,
 * arrows, lines and blocks that our screens draw. It is as wide as it is long. What is not among them is
 * looked up in Unicode.
 */
export const isPlain = (text: string): boolean => wide.test(text);

/** Whether every sign of a text is a whole character, whatever stands beside it: plain signs, and what styles them. */
export const isApart = (text: string): boolean => apart.test(text);
