/** The file that the trees of a folder share. */
export const shopFile = 'shop.json';

export const isTreeFile = (name: string): boolean =>
  name.endsWith('.json') && name !== shopFile && !name.endsWith('.schema.json');
