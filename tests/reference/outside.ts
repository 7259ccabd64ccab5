import { existsSync, readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { runInNewContext } from 'node:vm';

/**
 * Libraries by other hands, installed by `npm ci` in this folder. They are typed here because they
 * bring no types, and loaded here so that a checkout without them still runs every other test.
 */
const load = createRequire(import.meta.url);
const folder = new URL('./node_modules/', import.meta.url);

/** True when this folder's packages are there. */
export const installed = existsSync(folder);

/** Why an outside check did not run. */
export const absent = 'npm ci in tests/reference was not run';

type Quantity = { readonly to: (unit: string) => { readonly scalar: number } };

/** A quantity of js-quantities; temperatures are written `tempF`. */
export function outsideQuantity(value: number, unit: string): Quantity {
  const make: (value: number, unit: string) => Quantity = load('js-quantities');
  return make(value, unit);
}

type Saturation = {
  readonly r4_T_Psat: (kelvin: number) => number;
  readonly r4_P_Tsat: (megapascals: number) => number;
};

/** Region 4 of a steam library that is made for browsers: run as a script, it names itself globally. */
export function outsideSteam(): Saturation {
  const script = new URL(
    './neutriumjs.thermo.iapws97/dist/neutriumJS.thermo.IAPWS97.pt.min.js',
    folder,
  );
  const page: { NeutriumJS?: { thermo: { IAPWS97: { PT: Saturation } } } } = {};
  runInNewContext(readFileSync(script, 'utf8'), page);
  if (page.NeutriumJS === undefined) throw new Error('the steam library did not name itself');
  return page.NeutriumJS.thermo.IAPWS97.PT;
}

/** Newton's method of a root-finding library; false where it finds none. */
export function outsideRoot(of: (place: number) => number, guess: number): number | false {
  const find: (of: (place: number) => number, guess: number) => number | false =
    load('newton-raphson-method');
  return find(of, guess);
}

/** True when the validator is there. */
export const jsonSchemaRead = existsSync(new URL('./ajv/', folder));

type Validate = ((value: unknown) => boolean) & {
  readonly errors?: readonly { readonly instancePath: string; readonly message?: string }[] | null;
};

/** A validator made by ajv from a JSON Schema; it returns what is wrong, a line each. */
export function outsideValidator(schema: unknown): (value: unknown) => readonly string[] {
  const Ajv: new (options: object) => {
    addVocabulary: (words: readonly string[]) => void;
    compile: (schema: unknown) => Validate;
  } = load('ajv/dist/2020').default;
  const ajv = new Ajv({
    strict: true,
    allErrors: true,
    allowUnionTypes: true,
    strictTypes: false,
    strictTuples: false,
    strictRequired: false,
  });
  // What editors read beyond the standard.
  ajv.addVocabulary(['enumDescriptions', 'defaultSnippets']);
  const validate = ajv.compile(schema);
  return (value) =>
    validate(value)
      ? []
      : (validate.errors ?? []).map(
          ({ instancePath, message = '' }) => `${instancePath} ${message}`,
        );
}
