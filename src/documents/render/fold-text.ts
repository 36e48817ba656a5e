/** A list's line, "- the sight bar", hangs under its words; a name before two blanks or a colon-less column under its value. */
const HANGING = [/^\s*- /, /^\s*\S(?:.*?\S)?\s{2,}(?=\S)/, /^\s+/];
/** Words hang no farther in than this share of the width. */
const FARTHEST = 0.4;

/**
 * A text in lines no longer than a width, broken at blanks; a line break within it stays. What follows a break hangs under the
 * words of a list, or under the value beside a name.
 *
 * @param width characters, at least 20; a word longer than that is broken
 */
export const foldText = (text: string, width: number): string =>
  text
    .split('\n')
    .map((line) => foldLine(line, width))
    .join('\n');

/** A command line to copy goes on in the next line after a backslash, as a shell takes it. */
const COMMAND = /^ *quillpath /;
const GOES_ON = ' \\';

function foldLine(line: string, width: number): string {
  if (length(line) <= width) return line;
  if (COMMAND.test(line)) return foldWords(line, width - GOES_ON.length).join(`${GOES_ON}\n`);
  return foldWords(line, width).join('\n');
}

function foldWords(line: string, width: number): readonly string[] {
  const start =
    HANGING.map((pattern) => pattern.exec(line)?.[0]).find(
      (found) => found !== undefined && length(found) <= width * FARTHEST,
    ) ?? '';
  const indent = length(start);
  const hanging = ' '.repeat(indent);
  const lines: string[] = [];
  let current = start;
  let isFresh = true;
  for (const word of wordsOf(line.slice(start.length), width - indent)) {
    const joined = isFresh ? current + word : `${current} ${word}`;
    if (length(joined) <= width) current = joined;
    else {
      if (current.trim() !== '') lines.push(current.trimEnd());
      current = hanging + word;
    }
    isFresh = false;
  }
  return [...lines, current];
}

const wordsOf = (text: string, width: number): readonly string[] =>
  text
    .split(/\s+/)
    .filter((word) => word !== '')
    .flatMap((word) => pieces(word, width));

function pieces(word: string, width: number): readonly string[] {
  const characters = Array.from(word);
  const count = Math.max(1, Math.ceil(characters.length / width));
  return Array.from({ length: count }, (_, i) => characters.slice(i * width, (i + 1) * width).join(''));
}

const length = (text: string): number => Array.from(text).length;
