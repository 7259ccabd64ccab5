import { readFileSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { loadRaster } from '../../src/commands/raster.ts';
import { trusted } from '../../src/core/problem.ts';

const folder = 'sessions/examples';
const drawings = readdirSync(folder)
  .filter((name) => name.endsWith('.pictures'))
  .flatMap((name) =>
    readdirSync(join(folder, name))
      .filter((file) => file.endsWith('.svg'))
      .map((file) => join(folder, name, file)),
  );

/** Width and height of a PNG: its first chunk (W3C Portable Network Graphics, section 11.2.1). */
const sizeOf = (png: Uint8Array): readonly [number, number] => {
  const view = new DataView(png.buffer, png.byteOffset);
  return [view.getUint32(16), view.getUint32(20)];
};

test.each(drawings)(
  '%s comes out as a PNG of twice its size, the same bytes twice',
  async (path) => {
    const raster = trusted(await loadRaster());
    const svg = readFileSync(path, 'utf8');
    const [, width, height] = /<svg [^>]*width="(\d+)" height="(\d+)"/.exec(svg) ?? [];

    const png = raster(svg);

    expect(Array.from(png.slice(0, 8))).toEqual([137, 80, 78, 71, 13, 10, 26, 10]);
    expect(sizeOf(png)).toEqual([2 * Number(width), 2 * Number(height)]);
    expect(raster(svg)).toEqual(png);
  },
);

test('words are drawn: the same drawing without them comes out otherwise', async () => {
  const raster = trusted(await loadRaster());
  const svg = readFileSync(drawings[0] ?? '', 'utf8');

  expect(raster(svg.replace(/<text[\s\S]*?<\/text>/g, ''))).not.toEqual(raster(svg));
});

test('where the rasterizer is not there, or has no font, that is said in one line', async () => {
  class Blank {
    render() {
      return { asPng: () => new Uint8Array(), pixels: new Uint8Array(4) };
    }
  }
  const absent = await loadRaster(() => Promise.resolve(undefined));
  const blank = await loadRaster(() => Promise.resolve(Blank));

  expect(absent).toMatchObject({ problems: [{ code: 'no-raster' }] });
  expect(blank).toMatchObject({ problems: [{ code: 'no-font' }] });
});
