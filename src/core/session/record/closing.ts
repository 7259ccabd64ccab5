/** How a job may be closed. */
export const closings = ['fixed', 'handed-on', 'given-up', 'not-reproduced'] as const;
export type Closing = (typeof closings)[number];
