/** What was written under one heading, by the heading's name as an anchor; the first is `opening`. */
export type Section = { readonly name: string; readonly text: string };

/** A section as it stands in a file: its text now, and the mark of the text that was written there. */
type Marked = Section & { readonly mark: string };

/**
 * A mark by which a text is known again: FNV-1a of 32 bits over its code units (Fowler, Noll and Vo; its
 * numbers from memory). It tells an edit from none; it keeps nobody from forging one.
 */
export function markOf(text: string): string {
  let hash = 0x811c9dc5;
  for (let at = 0; at < text.length; at += 1)
    hash = Math.imul(hash ^ text.charCodeAt(at), 0x01000193) >>> 0;
  return hash.toString(16).padStart(8, '0');
}

const marker = /^<!-- droplight ([a-z0-9-]+) ([0-9a-f]{8}) -->$/;
const end = /^<!-- droplight wrote ((?:[a-z0-9-]+ )*)-->$/;
/** A block of YAML at the very beginning, where programs look for it. */
const front = /^---\n[\s\S]*?\n---\n+/;
const frontMark = /^front-([0-9a-f]{8})$/;

/** Markdown parted at its headings of the second level. */
export function sectionsOf(markdown: string): readonly Section[] {
  const parts = markdown.split(/^(?=## )/m);
  const seen = new Map<string, number>();
  return parts.map((text, index) => {
    const name = index === 0 ? 'opening' : slugOf(text);
    const before = seen.get(name) ?? 0;
    seen.set(name, before + 1);
    return { name: before === 0 ? name : `${name}-${before}`, text: text.trimEnd() };
  });
}

const slugOf = (text: string): string =>
  (text.split('\n')[0] ?? '')
    .toLowerCase()
    .replace(/[^a-z0-9 ]/g, '')
    .trim()
    .replace(/ +/g, '-') || 'section';

/** An account before it is written: its front matter, empty for none, and its sections. */
export type Fresh = { readonly front: string; readonly sections: readonly Section[] };

export const freshOf = (front: string, markdown: string): Fresh => ({
  front,
  sections: sectionsOf(markdown.slice(front.length)),
});

/** The account as it stands on the disk: a comment behind each section tells what was written there. */
export const withMarkers = ({ front, sections }: Fresh): string =>
  shown({
    front,
    mark: markOf(front),
    sections,
    wrote: sections.map(({ name }) => name),
  });

type Shown = {
  readonly front: string;
  readonly mark: string;
  readonly sections: readonly (Section & { readonly mark?: string })[];
  readonly wrote: readonly string[];
};

function shown({ front: head, mark: headMark, sections, wrote }: Shown): string {
  const parts = sections.map(
    ({ name, text, mark }) => `${text}\n\n<!-- droplight ${name} ${mark ?? markOf(text)} -->`,
  );
  const names = [...wrote, ...(head === '' ? [] : [`front-${headMark}`])];
  return `${head}${parts.join('\n\n')}\n\n<!-- droplight wrote ${names.map((name) => `${name} `).join('')}-->\n`;
}

/** What the writer made of an account that stood there. */
export type Edited = {
  /** The front matter as it stands there, and whether somebody changed it. */
  readonly front: { readonly text: string; readonly mark: string; readonly edited: boolean };
  readonly sections: readonly Marked[];
  /** Sections that were written and that the writer took out. */
  readonly dropped: readonly string[];
};

/** Whether a file is an account with markers: its last line says what was written. */
export const hasMarkers = (text: string): boolean => end.test(lastLine(text));

const lastLine = (text: string): string => text.trimEnd().split(/\r?\n/).at(-1) ?? '';

/** An account that was changed where that cannot be kept: what is wrong, and in which line. */
export type Damaged = { readonly kind: 'damaged'; readonly line: number; readonly what: string };

/** Reads an account back with what its writer changed; damaged where a marker is, or text stands outside. */
export function readEdited(text: string): (Edited & { readonly kind: 'edited' }) | Damaged {
  const plain = text.replaceAll('\r\n', '\n').trimEnd();
  const [head = ''] = front.exec(plain) ?? [];
  const lines = plain.slice(head.length).split('\n');
  const wrote = end
    .exec(lines.at(-1) ?? '')?.[1]
    ?.trim()
    .split(' ');
  if (wrote === undefined)
    return damaged(lines.length, 'its last line is not the one that was written');
  const sections = markedIn(lines.slice(0, -1));
  const wrong = troubleIn(lines.slice(0, -1), sections);
  if (wrong !== undefined) return wrong;
  const marked = wrote.flatMap((name) => frontMark.exec(name)?.[1] ?? [])[0] ?? markOf('');
  const names = sections.map(({ name }) => name);
  return {
    kind: 'edited',
    front: { text: head, mark: marked, edited: marked !== markOf(head) },
    sections,
    dropped: wrote.filter((name) => !frontMark.test(name) && !names.includes(name)),
  };
}

/** Sections, each up to the marker behind it; what stands behind the last one is in none. */
function markedIn(lines: readonly string[]): readonly Marked[] {
  const found: Marked[] = [];
  let text: string[] = [];
  for (const line of lines) {
    const [, name, mark] = marker.exec(line) ?? [];
    if (name === undefined || mark === undefined) text.push(line);
    else {
      found.push({ name, mark, text: text.join('\n').trim() });
      text = [];
    }
  }
  return found;
}

function troubleIn(lines: readonly string[], sections: readonly Marked[]): Damaged | undefined {
  const stray = lines.findIndex((line) => /<!-- *droplight\b/.test(line) && !marker.test(line));
  if (stray >= 0) return damaged(stray + 1, 'a marker is not as it was written');
  const last = lines.findLastIndex((line) => marker.test(line));
  const behind = lines.findIndex((line, index) => index > last && line.trim() !== '');
  if (behind >= 0) return damaged(behind + 1, 'something stands behind its last marker');
  const names = sections.map(({ name }) => name);
  const twice = names.find((name, index) => names.indexOf(name) !== index);
  return twice === undefined
    ? undefined
    : damaged(last + 1, `the marker "${twice}" stands there twice`);
}

const damaged = (line: number, what: string): Damaged => ({ kind: 'damaged', line, what });

/** An account written anew over one that its writer edited. */
export type Merged = {
  readonly text: string;
  /** Sections that were kept as edited. */
  readonly kept: readonly string[];
  /** Of these, what would be told otherwise by now. */
  readonly stale: readonly string[];
  readonly dropped: readonly string[];
};

/** Keeps what the writer changed, and writes the other sections anew. */
export function mergeEdited(fresh: Fresh, { front: head, sections, dropped }: Edited): Merged {
  const old = new Map(sections.map((one) => [one.name, one]));
  const edited = sections.filter(({ text, mark }) => markOf(text) !== mark);
  const names = fresh.sections.map(({ name }) => name);
  const kept = edited.map(({ name }) => name);
  const told = fresh.sections
    .filter(({ name }) => !dropped.includes(name))
    .map((one) => (kept.includes(one.name) ? (old.get(one.name) ?? one) : one));
  // What was edited and is not told any more stays, at its end.
  const left = edited.filter(({ name }) => !names.includes(name));
  const stale = edited.filter(({ name, mark }) => {
    const now = fresh.sections.find((one) => one.name === name);
    return now === undefined || markOf(now.text) !== mark;
  });
  return {
    text: shown({
      front: head.edited ? head.text : fresh.front,
      mark: head.edited ? head.mark : markOf(fresh.front),
      sections: [...told, ...left],
      wrote: [...names, ...left.map(({ name }) => name)],
    }),
    kept: [...(head.edited ? ['front matter'] : []), ...kept],
    stale: stale.map(({ name }) => name),
    dropped,
  };
}
