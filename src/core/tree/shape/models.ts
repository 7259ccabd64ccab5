import * as z from 'zod';

type Model = z.core.$ZodType;

/** The models that may hold at one place: one, or the members of a union; without what may be left out. */
function membersOf(model: Model): readonly Model[] {
  if (model instanceof z.ZodUnion) return model.options.flatMap(membersOf);
  if (
    model instanceof z.ZodOptional ||
    model instanceof z.ZodDefault ||
    model instanceof z.ZodPrefault ||
    model instanceof z.ZodNullable
  )
    return membersOf(model.unwrap());
  return [model];
}

/** The models for the value at a path below one; none where nothing can stand. */
export function modelsAt(model: Model, path: readonly PropertyKey[]): readonly Model[] {
  return path.reduce<readonly Model[]>(
    (models, step) => models.flatMap((one) => below(one, step)).flatMap(membersOf),
    membersOf(model),
  );
}

function below(model: Model, step: PropertyKey): readonly Model[] {
  if (model instanceof z.ZodObject) {
    const shape: Readonly<Record<string, Model>> = model.shape;
    const found = Object.hasOwn(shape, step) ? shape[String(step)] : undefined;
    return found === undefined ? [] : [found];
  }
  if (model instanceof z.ZodRecord) return [model.valueType];
  if (model instanceof z.ZodArray) return typeof step === 'number' ? [model.element] : [];
  if (model instanceof z.ZodTuple) {
    const { items, rest } = model.def;
    const item = typeof step === 'number' ? (items[step] ?? rest ?? undefined) : undefined;
    return item === undefined ? [] : [item];
  }
  return [];
}

/** The keys that a block at one place may have. */
export const keysOf = (models: readonly Model[]): readonly string[] => [
  ...new Set(models.flatMap((one) => (one instanceof z.ZodObject ? Object.keys(one.shape) : []))),
];

/** What may stand at one place, in an author's words. */
export function wantedOf(models: readonly Model[]): string {
  const words = new Set(models.map(wordFor));
  return [...words].join(', or ');
}

function wordFor(model: Model): string {
  if (model instanceof z.ZodEnum || model instanceof z.ZodLiteral)
    return 'one of the words or numbers for it';
  if (model instanceof z.ZodNumber) return 'a number';
  if (model instanceof z.ZodString) return 'a text in quotes';
  if (model instanceof z.ZodBoolean) return 'true or false';
  if (model instanceof z.ZodArray || model instanceof z.ZodTuple) return 'a list in [ ]';
  return 'a block in { }';
}
