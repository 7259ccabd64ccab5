import { paragraph } from '../core/account/block.ts';
import { practiceLine } from '../core/account/opening/practice.ts';
import { showHtml } from '../core/account/forms/html.ts';
import { showMarkdown } from '../core/account/forms/markdown.ts';
import { reviewBlocks } from '../core/review/outline.ts';
import { reviewOf } from '../core/review/review.ts';
import type { Review } from '../core/review/shape.ts';
import type { Story } from '../core/session/story.ts';
import { peopleJson, reviewCsv, reviewJson } from '../core/review/rows.ts';
import { fold } from '../core/session/fold.ts';
import { recordWarning, type Damage } from '../core/session/record/damage.ts';
import { clean } from '../core/text.ts';
import { sessionName } from '../store/find.ts';
import { loadSession } from '../store/sessions.ts';
import { done, printJson, type Ended, type Io } from './io.ts';
import { readOptions, wrongUse, type Given } from './options.ts';
import { namedSessions, recordJson } from './session.ts';
import { callOf, uses } from './uses.ts';

const forms = uses.review.values.as;
type Form = (typeof forms)[number];

/** `droplight review SESSION...`: what a mentor would talk about, and how the skills go from job to job. */
export async function review(io: Io, args: readonly string[]): Promise<Ended> {
  const given = readOptions(args, uses.review.options);
  if (given.kind === 'bad') return given;
  const form = formOf(given.value);
  if (form === undefined)
    return wrongUse('A review is written as md, html, csv or json.', callOf('review'));
  const paths = namedSessions(io, given.value, callOf('review'));
  if (paths.kind === 'bad') return paths;
  const reviewed: Reviewed[] = [];
  for (const path of paths.value) {
    const loaded = loadSession(io.disk.files, path);
    if (loaded.kind === 'bad') return loaded;
    const { damage, header, events } = loaded.value;
    reviewed.push({
      damage,
      story: fold(header, events),
      review: reviewOf(sessionName(path), loaded.value),
    });
  }
  print(io, form, reviewed);
  return done;
}

function formOf(given: Given): Form | undefined {
  if (given.flag('json')) return 'json';
  const said = given.text('as')?.toLowerCase();
  return said === undefined ? 'md' : forms.find((one) => one === said);
}

type Reviewed = {
  readonly review: Review;
  readonly story: Story;
  readonly damage: readonly Damage[];
};

/** That a record was altered stands before everything that is made of it, in every form. */
function print(io: Io, form: Form, reviewed: readonly Reviewed[]): void {
  const reviews = reviewed.map(({ review: one }) => one);
  const warnings = reviewed.flatMap(({ damage, story, review: { session } }) =>
    [recordWarning(damage), practiceLine(story)].flatMap((said) =>
      said === undefined ? [] : [`${session}: ${said}`],
    ),
  );
  const blocks = () => [...warnings.map((text) => paragraph(text)), ...reviewBlocks(reviewed)];
  switch (form) {
    case 'json':
      return printJson(io, {
        reviews: reviewed.map((one) => ({
          record: recordJson(one.damage),
          ...reviewJson(one.review),
        })),
        people: peopleJson(reviews),
      });
    case 'csv':
      // A sheet has no room for a word before its rows: it stands beside them.
      for (const warning of warnings) io.err(`${clean(warning)}\n`);
      return io.out(clean(reviewCsv(reviews)));
    case 'html':
      return io.out(showHtml(blocks(), () => undefined));
    case 'md':
      return io.out(showMarkdown(blocks()));
  }
}
