/** What is on a label in words of its own, not in those of its name. */
const WORDS: Readonly<Record<string, string>> = { uncalibrated: 'Leave aside what was shot' };

/** `angleStep` as a person reads it on a label. */
export const optionLabel = (option: string): string =>
  WORDS[option] ?? option.replace(/[A-Z]/g, (capital) => ` ${capital.toLowerCase()}`);
