/** `angleStep` as a person reads it on a label. */
export const optionLabel = (option: string): string =>
  option.replace(/[A-Z]/g, (capital) => ` ${capital.toLowerCase()}`);
