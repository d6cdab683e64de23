import path from 'node:path';

/** The repository's own folder. */
export const root = path.resolve(import.meta.dirname, '../../..');
