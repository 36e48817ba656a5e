import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { createProgram } from '../../src/cli/program.ts';
import { matchesShown, shownCommands, withOutputs } from './console-blocks.ts';
import { atTerminal } from './terminal.ts';

const examples = readdirSync('examples', { withFileTypes: true }).filter((entry) => entry.isDirectory());
const documents = ['README.md', ...examples.map(({ name }) => `examples/${name}/README.md`)];

/** `npm run golden` puts what the documents show anew, to be read as a diff before it is committed. */
if (process.env['REWRITE'] === 'yes')
  for (const path of documents) {
    const text = readFileSync(path, 'utf8');
    const outputs: string[] = [];
    for (const { argv } of shownCommands(text)) outputs.push((await atTerminal(argv)).out);
    writeFileSync(path, withOutputs(text, outputs));
  }

describe.each(documents)('%s', (path) => {
  const commands = shownCommands(readFileSync(path, 'utf8'));

  it('shows commands', () => expect(commands.length).toBeGreaterThan(0));

  it.each(commands.map((command) => [command.argv.join(' '), command] as const))(
    '%s prints what is shown',
    async (_, command) => {
      const seen = await atTerminal(command.argv);
      const output = seen.out + seen.err;
      if (!matchesShown(output, command.shown)) expect(output).toBe(command.shown.join('\n'));
    },
  );
});

const io = {
  out: () => {},
  err: () => {},
  readText: () => '',
  fonts: async () => ({ font: new Uint8Array(), boldFont: new Uint8Array() }),
  exists: () => false,
  writeWhole: () => {},
  now: () => new Date(0),
  columns: null,
};
const names = (await createProgram(io)).commands.map((command) => command.name());

describe('every command', () => {
  const readme = readFileSync('README.md', 'utf8');

  it.each(names)('%s has a purpose, examples, and a place in the README', async (name) => {
    const { out, code } = await atTerminal([name, '--help']);
    expect(code).toBe(0);
    expect(out).toMatch(/Examples:\n {2}# .+\n {2}quillpath /);
    expect(readme).toContain(`quillpath ${name}`);
  });
});
