/**
 * A number without the dust that floating-point arithmetic leaves behind its twelfth digit:
 * 9.599999999999998 is 9.6. For holding a value against a limit; no gauge reads nearly so finely.
 */
export function withoutDust(value: number): number {
  return Number.isFinite(value) ? Number(value.toPrecision(12)) : value;
}
