export function buildProgram(options?: {
  outdir?: string;
  entry?: string;
  name?: string;
}): Promise<readonly string[]>;
