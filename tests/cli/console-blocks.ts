/** One command of a document's ```console block, and the lines it is said to print. */
export interface ShownCommand {
  readonly argv: readonly string[];
  /** Where standard output is sent, when the command says so. */
  readonly into: string | null;
  readonly shown: readonly string[];
}

/** Words of a command line: blanks separate, double quotes hold together. */
const words = (line: string): string[] =>
  [...line.matchAll(/"([^"]*)"|(\S+)/g)].map(([, quoted, bare]) => quoted ?? bare ?? '');

/** Every `$ npx quillpath ...` of the ```console blocks of a Markdown text, in order. */
export function shownCommands(markdown: string): readonly ShownCommand[] {
  const blocks = [...markdown.matchAll(/```console\n([\s\S]*?)```/g)].map(([, body]) => body ?? '');
  return blocks.flatMap((body) => {
    const commands: { argv: string[]; into: string | null; shown: string[] }[] = [];
    for (const line of body.trimEnd().split('\n')) {
      if (line.startsWith('$ ')) {
        const all = words(line.slice(2)).filter((word) => word !== 'npx');
        const arrow = all.indexOf('>');
        commands.push({
          argv: arrow === -1 ? all : all.slice(0, arrow),
          into: arrow === -1 ? null : (all[arrow + 1] ?? null),
          shown: [],
        });
      } else commands.at(-1)?.shown.push(line);
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
