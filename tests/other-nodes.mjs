#!/usr/bin/env node
/**
 * Asks the built program the same things under other versions of Node and under this one, and says where the answers differ:
 *
 *   node tests/other-nodes.mjs 22 24          fetches these versions by npx, for this run alone
 *   node tests/other-nodes.mjs /opt/node24    or the program itself, by its path
 *
 * Asked is every line of the README and of the examples, and once each of the commands that those leave out. What is printed, the
 * exit code and the files written must be the same to the byte, but for numbers written in full, which must agree to nine digits: engines
 * round powers and exponentials differently in the last, and a fit ends within 1e-12 of where another does. Exits with 1 when they are not, or when a version cannot be had.
 */
import { spawnSync } from 'node:child_process';
import { cpSync, mkdtempSync, readdirSync, readFileSync, rmSync, statSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import process from 'node:process';

const HUNT = 'examples/mountain-hunt/setup.yaml';
const OTHERS = [
  ['--version'],
  ['--help'],
  ['new', 'new.yaml'],
  ['add', 'new.yaml', '55 yd 27.1 6 arrows'],
  ['check', HUNT, '--json'],
  ['pins', HUNT, '--out', 'pins.pdf'],
  ['swing', HUNT],
  ['broadhead', HUNT],
  ['scatter', HUNT, '--arrows', '24'],
  ['completion', 'bash'],
  ['marks', 'no-such-file.yaml'],
  ['tape', HUNT],
];

const say = (text) => process.stdout.write(`${text}\n`);
/** Blanks divide the words of a line, double quotes hold them together. */
const words = (line) => [...line.matchAll(/"([^"]*)"|(\S+)/g)].map(([, quoted, bare]) => quoted ?? bare);
const pages = readdirSync('examples', { recursive: true }).filter((name) => name.endsWith('.md'));
const shown = ['README.md', ...pages.map((name) => join('examples', name))]
  .flatMap((path) => [...readFileSync(path, 'utf8').matchAll(/^ *\$ quillpath (.*)$/gm)])
  .map(([, line]) => words(line));

/** Numbers of six decimals and more with nine significant digits. */
const rounded = (text) =>
  text.replace(/-?\d+\.\d{6,}(e[-+]\d+)?/g, (number) => Number(number).toPrecision(9));

/** The program of a version. */
function nodeOf(version) {
  if (!/^\d+/.test(version)) return version;
  const argv = ['--yes', '--package', `node@${version}`, '--', 'node', '--print', 'process.execPath'];
  const { stdout } = spawnSync('npx', argv, { encoding: 'utf8', cwd: tmpdir() });
  return stdout.trim();
}

/** What one Node makes of all lines: what each prints, then the files they wrote. */
function answers(node) {
  const folder = mkdtempSync(join(tmpdir(), 'quillpath-node-'));
  cpSync('examples', join(folder, 'examples'), { recursive: true });
  const env = { ...process.env, SOURCE_DATE_EPOCH: '0' };
  const told = [...shown, ...OTHERS].map((argv) => {
    const options = { cwd: folder, encoding: 'utf8', env };
    const { status, stdout, stderr } = spawnSync(node, [resolve('dist/main.js'), ...argv], options);
    return [argv.join(' '), rounded(`exit code ${status}\n${stdout}${stderr}`)];
  });
  const files = readdirSync(folder, { recursive: true })
    .filter((name) => statSync(join(folder, name)).isFile())
    .map((name) => [name, readFileSync(join(folder, name), 'latin1')]);
  rmSync(folder, { recursive: true });
  return new Map([...told, ...files]);
}

const here = answers(process.execPath);
let failed = false;
for (const version of process.argv.slice(2)) {
  const node = nodeOf(version);
  const { stdout: name = null } = spawnSync(node, ['--version'], { encoding: 'utf8' });
  if (name === null) {
    say(`Node ${version} could not be had.`);
    failed = true;
    continue;
  }
  const there = answers(node);
  const differ = [...here].filter(([what, answer]) => there.get(what) !== answer).map(([what]) => what);
  for (const what of differ) say(`differs: ${what}\n${there.get(what)?.slice(0, 300)}`);
  const lines = shown.length + OTHERS.length;
  say(
    `Node ${name.trim()}: ${lines} lines and ${here.size - lines} files, ${differ.length} unlike ${process.version}`,
  );
  failed ||= differ.length > 0;
}
process.exitCode = failed ? 1 : 0;
