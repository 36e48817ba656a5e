import { readdirSync, readFileSync, statSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { atTerminal, atWidth } from './terminal.ts';

const example = 'examples/mountain-hunt/setup.yaml';
const text = readFileSync(example, 'utf8');

const oneLine = async (
  argv: readonly string[],
  file: Readonly<Record<string, string>> = {},
): Promise<string> => (await atTerminal([...argv, '--all'], file)).out.replace(/\s+/g, ' ');

describe('sentences that were untrue once', () => {
  it('a difference that prints as zero is the same: never real, never open', async () => {
    const same = `${text}\nbuilds:\n  - name: twin\n    arrow: { parts: { point: { shape: mechanical } } }\n`;
    const argv = ['compare', 'twin.yaml', '--arrows', '0', '--all'];
    const { out } = await atWidth(140, argv, { 'twin.yaml': same });
    // name, unit, now, this build, difference
    const zero = out.split('\n').filter((line) => /^\S.*\S\s{2,}\S+\s{2,}\S+\s{2,}0\.?0*(\s|$)/.test(line));
    expect(zero.length).toBeGreaterThan(0);
    for (const line of zero) expect(line).toMatch(/ same\b/);
    expect(out.replace(/\s+/g, ' ')).not.toMatch(/Cannot be told apart: [^.]*[+-]?\b0\.0 (ft|in|lbf)/);
  });
  it('what is less than twice its error is called that', async () => {
    const out = await oneLine(['compare', 'examples/which-build/setup.yaml', '--arrows', '0']);
    expect(out).not.toContain('no more than the error');
  });
  it('check and swing tell one length of the swing', async () => {
    const [check, swing] = [await oneLine(['check', example]), await oneLine(['swing', example])];
    const told = /dies to 37 % within ([\d.]+) yd/;
    expect(told.exec(check)?.[1]).toBe(told.exec(swing)?.[1]);
  });
  it('arrows are the archer’s own only where a group was entered', async () => {
    expect(await oneLine(['misjudge', example])).toContain('of one of your arrows');
    const bare = text.replace(/, arrows: \d+, group: [\d.]+ in/g, '');
    const out = await oneLine(['misjudge', 'bare.yaml'], { 'bare.yaml': bare });
    expect(out).toContain("a good archer's arrow (assumed: no group is in the file)");
  });
  it('a guess that is never off is not told of twice', async () => {
    expect(await oneLine(['misjudge', example, '--guess', '0 %'])).not.toContain('with the range known');
  });
});

it('the pages list every example, and count them', () => {
  const names = readdirSync('examples').filter((name) => statSync(`examples/${name}`).isDirectory());
  const counted = ['None', 'One', 'Two', 'Three', 'Four', 'Five', 'Six', 'Seven'][names.length];
  const readme = readFileSync('README.md', 'utf8');
  for (const name of names) expect(readme).toContain(`[${name}](examples/${name}/README.md)`);
  expect(readme).toContain(`All ${counted?.toLowerCase()} are invented`);
  expect(readFileSync('examples/README.md', 'utf8')).toContain(`${counted} invented setups stand here`);
});
