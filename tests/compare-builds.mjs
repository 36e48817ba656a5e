#!/usr/bin/env node
/**
 * Asks two builds of quillpath the same questions and says where their answers differ.
 *
 *   node tests/compare-builds.mjs OLD/dist/main.js NEW/dist/main.js [SETUP...]
 *
 * JSON must have the same keys and values within 1e-9 of themselves (keys that only the new build has are listed, not refused);
 * text and CSV must be the same to the last character, else the first line that differs is shown. Exits with 1 when JSON differs.
 */
import { spawnSync } from 'node:child_process';
import { mkdtempSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import process from 'node:process';

const [before, after, ...named] = process.argv.slice(2);
const examples = ['field-course', 'mountain-hunt', 'which-build'].map(
  (name) => `examples/${name}/setup.yaml`,
);
const setups = named.length > 0 ? named : examples;
const out = mkdtempSync(join(tmpdir(), 'quillpath-compare-'));
const RELATIVE = 1e-9;
/** SI: what rounding leaves of a zero, such as the place of the zero range on its own tape. */
const ROUNDING = 1e-15;

const questions = [
  ['check'],
  ['fly'],
  ['marks'],
  ['fit'],
  ['tape', '--out', join(out, 'tape.svg')],
  ['card', '--out', join(out, 'card.pdf')],
  ['cant'],
  ['slope'],
  ['misjudge', '--ring', '8in'],
  ['wind'],
  ['swing'],
  ['broadhead'],
  ['scatter', '--arrows', '60'],
  ['compare', '--arrows', '0'],
  ['compare', '--arrows', '60', '--out', join(out, 'sheet.pdf')],
  ['vary', '--over', 'arrow.mass=400gr:500gr:50gr'],
  ['vary', '--over', 'launch.speed=270fps:290fps:10fps', '--over', 'air.temperature=20degF:80degF:30degF'],
];
const commandLines = setups.flatMap((setup) =>
  questions.flatMap(([name, ...rest]) =>
    [[], ['--units', 'metric'], ['--uncalibrated']].map((more) => [name, setup, ...rest, ...more]),
  ),
);

const ask = (program, argv) => {
  const { stdout, stderr, status } = spawnSync(process.execPath, [program, ...argv], { encoding: 'utf8' });
  return { stdout, stderr, status };
};

/** Paths at which two JSON values differ; `added` collects what only the second has. */
function differences(a, b, path, added) {
  if (typeof a === 'number' && typeof b === 'number')
    return Math.abs(a - b) <= Math.max(RELATIVE * Math.max(Math.abs(a), Math.abs(b)), ROUNDING)
      ? []
      : [`${path}: ${a} -> ${b}`];
  if (Array.isArray(a) && Array.isArray(b))
    return a.length === b.length
      ? a.flatMap((value, i) => differences(value, b[i], `${path}[${i}]`, added))
      : [`${path}: ${a.length} -> ${b.length} entries`];
  if (a !== null && b !== null && typeof a === 'object' && typeof b === 'object') {
    for (const key of Object.keys(b)) if (!(key in a)) added.add(`${path.replace(/\[\d+\]/g, '[]')}.${key}`);
    return Object.entries(a).flatMap(([key, value]) =>
      key in b ? differences(value, b[key], `${path}.${key}`, added) : [`${path}.${key}: is gone`],
    );
  }
  return a === b ? [] : [`${path}: ${JSON.stringify(a)} -> ${JSON.stringify(b)}`];
}

let [jsonWrong, textChanged, asked] = [0, 0, 0];
const added = new Set();
for (const argv of commandLines)
  for (const form of [['--json'], ['--csv'], []]) {
    const [old, now] = [ask(before, [...argv, ...form]), ask(after, [...argv, ...form])];
    asked += 1;
    const line = [...argv, ...form].join(' ');
    if (old.status !== now.status) {
      jsonWrong += 1;
      console.log(`${line}: exit ${old.status} -> ${now.status}`);
    } else if (form[0] === '--json' && old.status === 0) {
      const found = differences(JSON.parse(old.stdout), JSON.parse(now.stdout), argv[0], added);
      if (found.length > 0) jsonWrong += 1;
      for (const difference of found.slice(0, 5)) console.log(`${line}: ${difference}`);
    } else if (old.stdout !== now.stdout || old.stderr !== now.stderr) {
      textChanged += 1;
      const [a, b] = [old.stdout + old.stderr, now.stdout + now.stderr].map((text) => text.split('\n'));
      const i = a.findIndex((text, k) => text !== b[k]);
      console.log(`${line}:\n  - ${a[i]}\n  + ${b[i]}`);
    }
  }
for (const key of added) console.log(`new key: ${key}`);
console.log(`${asked} answers: ${jsonWrong} differ in JSON or exit code, ${textChanged} in text or CSV`);
process.exitCode = jsonWrong > 0 ? 1 : 0;
