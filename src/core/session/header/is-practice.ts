import type { Practice } from './practice.ts';

/** Whether a session is practice on a hidden fault: no work on a vehicle, and never counted as such. */
export const isPractice = ({ practice }: { readonly practice?: Practice | undefined }): boolean =>
  practice !== undefined;
