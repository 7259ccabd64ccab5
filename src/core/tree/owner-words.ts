/**
 * The words of a sentence by which a complaint is found, as they are compared: small, without the ending
 * of their form, one for all that mean the same here, without those that tell nothing.
 */
export const tellingWords = (sentence: string): readonly string[] =>
  sentence
    .toLowerCase()
    .replaceAll(/['\u2019]/g, '')
    .split(/[^\p{L}\d]+/u)
    .filter((word) => word !== '' && !silent.has(word))
    .map((word) => stemOf(meant[word] ?? word));

/** Words that stand in any sentence. */
const silent: ReadonlySet<string> = new Set(
  'a an and any are as at be been but by car for from has have i in into is it its me my of one or so some that the them then there they this to truck van vehicle very was when while with'.split(
    ' ',
  ),
);

/** What owners say for what the trees say: the British words of src/guide/walk.md, lights, the commonest slip, and "not" in all its forms. */
const meant: Readonly<Record<string, string>> = {
  ...Object.fromEntries(
    'arent cannot cant couldnt didnt doesnt dont isnt never wasnt wont wouldnt'
      .split(' ')
      .map((word) => [word, 'not']),
  ),
  light: 'lamp',
  lights: 'lamp',
  headlight: 'headlamp',
  headlights: 'headlamp',
  blinker: 'signal',
  blinkers: 'signal',
  indicator: 'signal',
  indicators: 'signal',
  guage: 'gauge',
  guages: 'gauge',
  petrol: 'fuel',
  gasoline: 'fuel',
  bonnet: 'hood',
  boot: 'trunk',
  wing: 'fender',
  bulkhead: 'firewall',
  carburettor: 'carburetor',
  spanner: 'wrench',
  clearance: 'lash',
  windscreen: 'windshield',
  sump: 'pan',
  gearbox: 'transmission',
  silencer: 'muffler',
  accumulator: 'battery',
  earth: 'ground',
  dynamo: 'generator',
  tyre: 'tire',
  tyres: 'tire',
  electric: 'power',
  electrics: 'power',
  electricity: 'power',
};

/** A word without the ending of its form; no rule of grammar, enough to find by. */
function stemOf(word: string): string {
  const stem = word
    .replace(/ies$/, 'y')
    .replace(/(ing|ed|es|s)$/, '')
    .replace(/(.)\1$/, '$1')
    .replace(/e$/, '');
  return stem.length >= leastLetters ? stem : word.replace(/s$/, '');
}

/** A shorter stem would stand for words that have nothing in common. */
const leastLetters = 3;
