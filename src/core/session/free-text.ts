import * as z from 'zod';

const written = z.registry<{ readonly by: 'person' | 'program' }>();

/** What a person typed in words of their own: the names of people and vehicles may stand in it. */
export const freeText = (most = 20_000) => z.string().max(most).register(written, { by: 'person' });

/** What the program wrote, or took only after it could read it: a unit, a time, a source. */
export const programText = (most = 20_000) =>
  z.string().max(most).register(written, { by: 'program' });

/** Who wrote a text; undefined for a text that has not been marked. */
export const writtenBy = (model: z.core.$ZodType): 'person' | 'program' | undefined =>
  written.get(model as z.ZodString)?.by;

/** Changes every free text of a value, which has been read by its model; the rest stays. */
export function changeFreeText(
  model: z.core.$ZodType,
  value: unknown,
  change: (text: string) => string,
): unknown {
  if (model instanceof z.ZodOptional) return changeFreeText(model.unwrap(), value, change);
  if (typeof value === 'string') return writtenBy(model) === 'person' ? change(value) : value;
  if (model instanceof z.ZodArray && Array.isArray(value))
    return value.map((one) => changeFreeText(model.element, one, change));
  const fieldOf = fieldsOf(model);
  if (fieldOf === undefined || typeof value !== 'object' || value === null) return value;
  return Object.fromEntries(
    Object.entries(value).map(([name, one]: [string, unknown]) => {
      const field = fieldOf(name);
      return [name, field === undefined ? one : changeFreeText(field, one, change)];
    }),
  );
}

type FieldOf = (name: string) => z.core.$ZodType | undefined;

/** The model of each field of an object or a record; undefined for anything else. */
function fieldsOf(model: z.core.$ZodType): FieldOf | undefined {
  if (model instanceof z.ZodRecord) return () => model.valueType;
  if (!(model instanceof z.ZodObject)) return undefined;
  const shape: Readonly<Record<string, z.core.$ZodType>> = model.shape;
  return (name) => (Object.hasOwn(shape, name) ? shape[name] : undefined);
}
