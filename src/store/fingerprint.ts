import { createHash } from 'node:crypto';
import type { Fingerprint } from '../core/session/chain.ts';

export const sha256: Fingerprint = (text) => createHash('sha256').update(text).digest('hex');
