import type { Io } from './io.ts';
import { teller } from './program/progress.ts';
import { bad, good, type Parsed } from '../core/problem.ts';

/** Draws an SVG as a PNG, twice as many dots across as the drawing has. */
export type Raster = (svg: string) => Uint8Array;

/** What we ask of resvg, a rasterizer by other hands. */
type Resvg = new (
  svg: string,
  options: {
    readonly fitTo: { readonly mode: 'zoom'; readonly value: number };
    readonly font: { readonly loadSystemFonts: boolean; readonly defaultFontFamily: string };
  },
) => { render(): { asPng(): Uint8Array; readonly pixels: Uint8Array } };

const options = {
  fitTo: { mode: 'zoom', value: 2 },
  font: { loadSystemFonts: true, defaultFontFamily: 'sans-serif' },
} as const;

/** One letter and nothing else: a machine without a font leaves it empty. */
const letter =
  '<svg xmlns="http://www.w3.org/2000/svg" width="20" height="20"><text x="2" y="16" font-family="sans-serif" font-size="16">M</text></svg>';

/** The name stands apart, so that what packs the program leaves it to whoever has it. */
const name = '@resvg/resvg-js';

/**
 * Loads the rasterizer, where somebody has installed it.
 * @returns bad where it is not there, or the machine has no font to draw letters with
 */
export async function loadRaster(load = loadResvg): Promise<Parsed<Raster>> {
  const resvg = await load();
  if (resvg === undefined)
    return bad({
      code: 'no-raster',
      message: `Pictures as PNG want the rasterizer ${name}, which is not installed.`,
      mend: `Leave --png out, or install it beside Droplight: npm install ${name}.`,
    });
  if (!new resvg(letter, options).render().pixels.some((dot) => dot !== 0))
    return bad({
      code: 'no-font',
      message: 'No font was found to draw letters with, so that pictures would have no words.',
      mend: 'Leave --png out, or install a sans-serif font on this machine.',
    });
  return good((svg) => new resvg(svg, options).render().asPng());
}

async function loadResvg(): Promise<Resvg | undefined> {
  try {
    const loaded = (await import(name)) as { readonly Resvg: Resvg };
    return loaded.Resvg;
  } catch {
    // Not there, or not for this machine: told in one line by whoever asked for it.
    return undefined;
  }
}

/** Drawings as their files hold them: as they were drawn, or as PNG. */
export function drawnBy(
  io: Io,
  pictures: Readonly<Record<string, string>>,
  raster: Raster | undefined,
): readonly (readonly [string, string | Uint8Array])[] {
  const drawings = Object.entries(pictures);
  if (raster === undefined) return drawings;
  const { tell, end } = teller(io, 'Drawing pictures');
  const drawn = drawings.map(([file, svg], index) => {
    tell({ done: index, of: drawings.length });
    return [file.replace(/svg$/, 'png'), raster(svg)] as const;
  });
  end();
  return drawn;
}
