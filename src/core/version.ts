/** This version, as package.json has it (a test holds the two together). */
export const version = '0.1.0';
