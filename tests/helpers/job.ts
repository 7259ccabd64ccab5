import { startKeys } from './program.ts';

/** A job by keys, from its first check to its end, with the pages that open on the way. */
export const job = {
  'a set-up before a check': startKeys(),
  'a check that is looked at': `${startKeys()}y`,
  'the same after an answer': `${startKeys()}y2`,
  'the other checks': `${startKeys()}y2o`,
  'a check with its cautions': `${startKeys()}y2o5`,
  'the suspects': `${startKeys()}y2r`,
  'the cautions of a cause': `${startKeys()}y2r2`,
  'is it this': `${startKeys()}y2r2Z1`,
  'what was found': `${startKeys()}y2r2Z1y`,
  'looked, and it was not this': `${startKeys()}y2r2Z1x`,
  'a set-up before a repair': `${startKeys()}y2r2Z1y<enter>`,
  'a repair': `${startKeys()}y2r2Z1y<enter>Zy`,
  'what was done': `${startKeys()}y2r2Z1y<enter>ZyZy`,
  'after the repair': `${startKeys()}y2r2Z1y<enter>ZyZy<esc>`,
  'what is apart': `${startKeys()}y2pair filter<enter><enter><enter><enter><enter>phorn<enter><enter><enter><enter><enter>a`,
  'how it ends': `${startKeys()}y2c`,
  'how it ends, a line marked': `${startKeys()}y2c3`,
  'the job closed': `${startKeys()}y2c3y`,
  'opening it again': `${startKeys()}y2c3yc`,
  'the history': `${startKeys()}y2r2Z1y<enter>ZyZy<esc>t`,
  'a note': `${startKeys()}y2nfan belt`,
} as const;
