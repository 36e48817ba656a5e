import { spawnSync } from 'node:child_process';
import { mkdtempSync, readdirSync, readFileSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { afterAll, describe, expect, inject, it } from 'vitest';
import {
  ask,
  openSetup,
  QUESTIONS,
  QuestionError,
  type QuestionName,
  SetupError,
} from '../../src/quillpath.ts';
import { atTerminal } from './terminal.ts';

const example = 'examples/mountain-hunt/setup.yaml';
const text = readFileSync(example, 'utf8');
const folder = mkdtempSync(join(tmpdir(), 'quillpath-'));
afterAll(() => rmSync(folder, { recursive: true }));

describe('the script of the README', () => {
  const script = /```js\n([\s\S]*?)```/.exec(readFileSync('README.md', 'utf8'))?.[1] ?? '';

  it('runs against the built package and prints the readings of the command line, and a tape as SVG', async () => {
    // The package as one that was installed: under node_modules of an empty folder, with the example beside it.
    spawnSync('mkdir', ['-p', join(folder, 'node_modules')]);
    symlinkSync(resolve('.'), join(folder, 'node_modules/quillpath'));
    symlinkSync(resolve('examples'), join(folder, 'examples'));
    writeFileSync(join(folder, 'script.mjs'), script);
    const { stdout, stderr } = spawnSync(process.execPath, ['script.mjs'], { cwd: folder, encoding: 'utf8' });
    expect(stderr).toBe('');
    const { out } = await atTerminal([
      'marks',
      example,
      '--from',
      '20yd',
      '--to',
      '60yd',
      '--every',
      '20yd',
      '--json',
    ]);
    const rows: readonly { range_m: number; reading: number; reading_sd: number }[] = JSON.parse(out).rows;
    expect(rows).toHaveLength(3);
    expect(stdout).toBe(
      rows
        .map(
          (row) => `${row.range_m.toFixed(1)} m: ${row.reading.toFixed(2)} ± ${row.reading_sd.toFixed(2)}\n`,
        )
        .join(''),
    );
    // The script asks for what the command line asks for, on the same day: every tick and every letter of it.
    const { files } = await atTerminal(['tape', example, '--out', 'tape.svg', '--date', '2026-04-18']);
    const svg = readFileSync(join(folder, 'tape.svg'), 'utf8');
    expect(svg).toBe(files.get('tape.svg'));
    // A sheet of sixteen strips, cut on four sides, of 20 to 100 yd: 81 marks, which stand farther apart than 0.35 mm.
    const [ticks, cuts] = [/class="(?:hollow-)?tick"/g, /class="cut"/g].map(
      (role) => svg.match(role)?.length,
    );
    expect({ ticks, cuts }).toEqual({ ticks: 16 * 81, cuts: 16 * 4 });
  });
});

describe('the built library', () => {
  it('asks for no module of Node', () => {
    const dist = join(inject('dist'), 'library');
    const parts = readdirSync(join(dist, 'parts')).map((name) => join('parts', name));
    const files = ['quillpath.js', ...parts].filter((name) => name.endsWith('.js'));
    // Every question is a part of its own, loaded when it is first asked.
    expect(files.length).toBeGreaterThan(Object.keys(QUESTIONS).length);
    const asksForNode = /(from|import)\s*\(?"node:|\brequire\(/;
    expect(files.filter((name) => asksForNode.test(readFileSync(join(dist, name), 'utf8')))).toEqual([]);
  });
});

/** What a question needs besides its defaults. */
const NEEDED: Partial<Record<QuestionName, Readonly<Record<string, string>>>> = {
  vary: { over: 'arrow.mass=440gr:460gr:20gr' },
  scatter: { arrows: '24' },
  compare: { arrows: '0' },
};
const asked = Object.keys(QUESTIONS) as readonly QuestionName[];

describe.each(asked)('ask %s', (name) => {
  it('gives the data that the command line prints', async () => {
    const path = name === 'compare' ? 'examples/which-build/setup.yaml' : example;
    const given = NEEDED[name] ?? {};
    const report = await ask(name, openSetup(readFileSync(path, 'utf8'), path), given);
    const { sheet } = await QUESTIONS[name].question();
    const out = sheet?.when === 'always' ? ['--out', 'x.svg'] : [];
    const options = Object.entries(given).flatMap(([option, value]) => [`--${option}`, value]);
    const seen = await atTerminal([name, path, ...options, ...out, '--json']);
    // The door alone knows the names of the files; it adds them for a question that has a document.
    const files = sheet === null ? {} : { files: out.slice(1) };
    expect(JSON.parse(JSON.stringify({ ...report.data, ...files }))).toEqual(JSON.parse(seen.out));
    // Plain data can be sent from thread to thread.
    expect(structuredClone(report)).toEqual(report);
    expect(report.sheet).toBeNull();
  });
});

describe('what cannot be asked', () => {
  const setup = openSetup(text, 'setup.yaml');

  it('an option of another question is named, with those there are', async () => {
    await expect(ask('marks', setup, { crosswind: '5 mph' } as never)).rejects.toThrow(
      /^marks has no option crosswind\. It has from, to, every, /,
    );
  });
  it('a range without a unit is refused by the name of its field', async () => {
    await expect(ask('marks', setup, { from: 'far' })).rejects.toThrow(QuestionError);
    await expect(ask('marks', setup, { from: 'far' })).rejects.toThrow(/^from: "far"/);
  });
  it('a text that is no setup is a SetupError with line and column', () => {
    expect(() => openSetup(text.replace('peep_height:', 'peep_hight:'), 'bow.yaml')).toThrow(SetupError);
    expect(() => openSetup(text.replace('peep_height:', 'peep_hight:'), 'bow.yaml')).toThrow(
      /bow\.yaml:\d+:\d+/,
    );
  });
});
