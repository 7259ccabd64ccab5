/**
 * Signs of one column each, every one of them a whole character whatever stands beside it: ASCII, Latin, Greek,
 * Cyrillic, and the marks, arrows, lines and blocks that our screens draw. What is not among them is looked up in Unicode.
 */
const plain =
  /^[ -~\u00a0-\u00ac\u00ae-\u02ff\u0391-\u03a1\u03a3-\u03a9\u03b1-\u03c9\u0410-\u044f\u2010-\u2027\u2030-\u205e\u20a0-\u20bf\u2150-\u215e\u2190-\u2193\u2200-\u22ff\u2500-\u25c9]*$/;

/** Whether a text is of such signs alone, and so as wide as it is long. */
export const isPlain = (text: string): boolean => plain.test(text);
