/** JSON path as people write it: `checks.lamps.results[1].next`. */
export function showPath(path: readonly PropertyKey[]): string {
  return path
    .map((key) => (typeof key === 'number' ? `[${key}]` : `.${String(key)}`))
    .join('')
    .replace(/^\./, '');
}
