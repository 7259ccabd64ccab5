export function buildProgram(options?: {
  outdir?: string;
  entry?: string;
  name?: string;
  isLean?: boolean;
}): Promise<readonly string[]>;
