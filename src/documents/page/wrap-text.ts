import type { Weight } from './drawing.ts';
import { textWidth } from './text-measure.ts';

export interface TextSpace {
  /** Room for a line, mm. */
  readonly width: number;
  /** The em, mm. */
  readonly size: number;
  readonly weight?: Weight;
}

/** The text broken into lines no wider than the space: at blanks, and inside a word only if the word alone is too long. */
export function wrapText(text: string, space: TextSpace): readonly string[] {
  const fits = (line: string) => textWidth(line, space.size, space.weight) <= space.width;
  const lines: string[] = [];
  let line = '';
  for (const word of text.split(/\s+/).filter((part) => part !== '')) {
    const joined = line === '' ? word : `${line} ${word}`;
    if (fits(joined)) {
      line = joined;
      continue;
    }
    if (line !== '') lines.push(line);
    const pieces = broken(word, fits);
    lines.push(...pieces.slice(0, -1));
    line = pieces.at(-1) ?? '';
  }
  return line === '' ? lines : [...lines, line];
}

function broken(word: string, fits: (line: string) => boolean): readonly string[] {
  const pieces: string[] = [];
  let piece = '';
  for (const character of word) {
    if (piece !== '' && !fits(piece + character)) {
      pieces.push(piece);
      piece = '';
    }
    piece += character;
  }
  return [...pieces, piece];
}

/** The text as it is if it fits on one line, else cut short and closed with an ellipsis. */
export function shortenedText(text: string, space: TextSpace): string {
  const fits = (line: string) => textWidth(line, space.size, space.weight) <= space.width;
  if (fits(text)) return text;
  const characters = Array.from(text);
  while (characters.length > 0 && !fits(`${characters.join('').trimEnd()}…`)) characters.pop();
  return `${characters.join('').trimEnd()}…`;
}
