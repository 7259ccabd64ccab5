/**
 * What a person may mean by a path that was typed, pasted or dropped on the terminal, the likeliest
 * first: as it stands, out of its quotes, without the backslashes that terminals put before blanks
 * and brackets, or out of a `file://` address.
 */
export function meantPaths(typed: string): readonly string[] {
  const text = typed.trim();
  const bare = /^'(.*)'$/.exec(text)?.[1] ?? /^"(.*)"$/.exec(text)?.[1];
  const one = bare ?? text;
  const tries = [text, one, ...fromAddress(one), unescaped(one)];
  return [...new Set(tries)].filter((path) => path !== '');
}

/** `file:///home/jo/my%20photo.jpg`, with a host or without one. */
function fromAddress(text: string): readonly string[] {
  const path = /^file:\/\/[^/]*(\/.*)$/i.exec(text)?.[1];
  if (path === undefined) return [];
  try {
    // On Windows the drive stands behind the slash.
    return [decodeURIComponent(path).replace(/^\/(?=[A-Za-z]:)/, '')];
  } catch {
    return [];
  }
}

/** A shell's backslashes; those of a path on Windows are its own. */
const unescaped = (text: string): string =>
  /^([A-Za-z]:)?\\/.test(text) || /^[A-Za-z]:/.test(text) ? text : text.replace(/\\(.)/g, '$1');
