/** One command of a document's ```console block, and the lines it is said to print. */
export interface ShownCommand {
  readonly argv: readonly string[];
  /** Of the block it stands in. */
  readonly indent: string;
  readonly shown: readonly string[];
}

/** Words of a command line: blanks separate, double quotes hold together. */
const words = (line: string): string[] =>
  [...line.matchAll(/"([^"]*)"|(\S+)/g)].map(([, quoted, bare]) => quoted ?? bare ?? '');

/** Every `$ quillpath ...` of the ```console blocks of a Markdown text, in order; a block inside a list may be indented. */
export function shownCommands(markdown: string): readonly ShownCommand[] {
  const blocks = [...markdown.matchAll(/^( *)```console\n([\s\S]*?)\n *```/gm)];
  return blocks.flatMap(([, indent = '', body = '']) => {
    const commands: { argv: string[]; indent: string; shown: string[] }[] = [];
    for (const line of body.split('\n').map((text) => text.replace(indent, ''))) {
      if (line.startsWith('$ ')) commands.push({ argv: words(line.slice(2)), indent, shown: [] });
      else commands.at(-1)?.shown.push(line);
    }
    return commands
      .filter(({ argv }) => argv[0] === 'quillpath')
      .map((command) => ({ ...command, argv: command.argv.slice(1) }));
  });
}

/** Whether an output is what a document shows: line by line, where a line `...` stands for any lines. */
export function matchesShown(output: string, shown: readonly string[]): boolean {
  const literal = (line: string) => line.trimEnd().replace(/[.*+?^${}()|[\]\\]/g, '\\$&');
  const trimmed = (lines: readonly string[]) =>
    lines
      .map((line) => line.trimEnd())
      .join('\n')
      .trim();
  const pattern = trimmed(shown)
    .split('\n')
    .map((line) => (line === '...' ? '[\\s\\S]*?' : literal(line)))
    .join('\\n');
  return new RegExp(`^${pattern.replaceAll('\\n[\\s\\S]*?', '(?:\\n[\\s\\S]*?)?')}$`).test(
    trimmed(output.split('\n')),
  );
}

/** The text with everything a document shows put anew; of an output shown in part (with a line `...`) the numbers alone. */
export function withOutputs(markdown: string, outputs: readonly string[]): string {
  let text = markdown;
  for (const [i, { shown, indent }] of shownCommands(markdown).entries()) {
    if (shown.length === 0) continue;
    const indented = (lines: readonly string[]) =>
      lines.map((line) => (line === '' ? '' : indent + line)).join('\n');
    const output = (outputs[i] ?? '')
      .trimEnd()
      .split('\n')
      .map((line) => line.trimEnd());
    const fresh = shown.includes('...') ? withNumbers(shown, output) : output;
    text = text.replace(`\n${indented(shown)}\n`, () => `\n${indented(fresh)}\n`);
  }
  return text;
}

/** Lines with the numbers that the output has now. A line whose words have changed stays, for a person to look at. */
function withNumbers(shown: readonly string[], output: readonly string[]): readonly string[] {
  let next = 0;
  return shown.map((line) => {
    const at =
      line === '...' ? -1 : output.findIndex((fresh, i) => i >= next && wordsOf(fresh) === wordsOf(line));
    if (at < 0) return line;
    next = at + 1;
    return output[at] ?? line;
  });
}

/** A line without its numbers and the spaces around them. */
const wordsOf = (line: string): string => line.replace(/[-+]?\d+(\.\d+)?/g, '').replace(/\s+/g, '');
