/** A text as one word of a POSIX shell: in single quotes nothing has a meaning but the quote itself. */
export const quoted = (text: string): string => `'${text.replaceAll("'", String.raw`'\''`)}'`;
