/** The two faces that pictures are set in. */
export type Weight = 'plain' | 'bold';

/*
 * Widths in thousandths of the size, of the characters from space to tilde. Of each the wider of two
 * faces stands here, DejaVu Sans 2.37 and Liberation Sans 2.1 (as wide as Helvetica and Arial), as
 * read from the tables `cmap` and `hmtx` of their files.
 */
const ascii: Readonly<Record<Weight, readonly number[]>> = {
  // oxfmt-ignore
  plain: [
    318, 401, 460, 838, 637, 951, 780, 275, 391, 391, 500, 838, 318, 361, 318, 337,
    637, 637, 637, 637, 637, 637, 637, 637, 637, 637, 337, 337, 838, 838, 838, 557,
    1016, 685, 687, 723, 771, 667, 611, 778, 752, 295, 500, 667, 558, 863, 749, 788,
    667, 788, 723, 667, 611, 732, 685, 989, 686, 667, 686, 391, 337, 391, 838, 557,
    500, 613, 635, 550, 635, 616, 353, 635, 634, 278, 278, 580, 278, 975, 634, 612,
    635, 635, 412, 521, 393, 634, 592, 818, 592, 592, 525, 637, 337, 637, 838,
  ],
  // oxfmt-ignore
  bold: [
    349, 457, 521, 838, 696, 1002, 873, 307, 458, 458, 523, 838, 380, 416, 380, 366,
    696, 696, 696, 696, 696, 696, 696, 696, 696, 696, 400, 400, 838, 838, 838, 611,
    1000, 774, 763, 734, 831, 684, 684, 821, 837, 373, 557, 775, 638, 996, 837, 851,
    733, 851, 771, 721, 683, 813, 774, 1104, 771, 725, 726, 458, 366, 458, 838, 557,
    500, 675, 716, 593, 716, 679, 436, 716, 712, 343, 343, 666, 343, 1042, 712, 688,
    716, 716, 494, 596, 479, 712, 652, 924, 646, 652, 583, 712, 366, 712, 838,
  ],
};

/** The same for signs of the trade and of print. */
const signs: Readonly<Record<string, readonly [plain: number, bold: number]>> = {
  '°': [500, 500],
  µ: [637, 736],
  Ω: [765, 851],
  '·': [318, 380],
  '–': [557, 557],
  '“': [519, 658],
  '”': [519, 658],
  '’': [318, 380],
  '‘': [318, 380],
};

/** The widest of a block of characters, so that no text comes out wider than it was measured. */
const widest = (point: number): number => {
  if (point < 0x180) return 1170;
  return point < 0x1100 ? 1560 : 1400;
};

/** How wide one character is, in thousandths of its size. */
export function markWidth(mark: string, weight: Weight): number {
  const point = mark.codePointAt(0) ?? 0;
  const known = ascii[weight][point - 0x20];
  if (known !== undefined) return known;
  const sign = signs[mark]?.[weight === 'bold' ? 1 : 0];
  return sign ?? (point >= 0x2000 && point < 0x2e80 ? 1040 : widest(point));
}
