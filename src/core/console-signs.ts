/**
 * Signs of ours that the font of a bare Linux console may lack, each by one of the same width that any
 * font has. The console's own font holds code page 437; what a system loads instead holds more.
 */
const simpler: Readonly<Record<string, string>> = {
  '╌': '-',
  '┄': '-',
  '╳': 'x',
  '…': '~',
  '→': '>',
  '–': '-',
  '−': '-',
  '×': 'x',
  '‘': "'",
  '’': "'",
  '“': '"',
  '”': '"',
  '′': "'",
  '″': '"',
};

const lacking = new RegExp(`[${Object.keys(simpler).join('')}]`, 'gu');

/** Text as the font of a bare console can show it; its columns stay where they are. */
export const inConsoleFont = (text: string): string =>
  text.replace(lacking, (sign) => simpler[sign] ?? sign);
