import { readFileSync, writeFileSync } from 'node:fs';
import process from 'node:process';
import {
  type Baseline,
  baselineOf,
  betterOf,
  type Figure,
  figureLine,
  MARGIN,
  whatGotSlower,
} from './figure.ts';
import { flightFigures } from './flight-bench.ts';
import { rigidFigures } from './rigid-bench.ts';
import { startUpFigures } from './start-up-bench.ts';

/**
 * `npm run bench`: what flights, fits and whole runs cost, as ratios beside their targets. Times drift with the machine;
 * ratios taken in one run are what counts.
 *
 *   npm run bench -- --check   says what got slower than the baseline, and ends with 1 if something did
 *   npm run bench -- --keep    writes the baseline
 */
const BASELINE = 'tests/bench/baseline.json';
const SECTIONS: readonly (() => readonly Figure[] | Promise<readonly Figure[]>)[] = [
  flightFigures,
  rigidFigures,
  startUpFigures,
];

const [option] = process.argv.slice(2);
if (option !== undefined && option !== '--check' && option !== '--keep') {
  console.error(`The bench knows no ${option}: write --check, --keep or nothing.`);
  process.exit(2);
}

const kept = (): Baseline => JSON.parse(readFileSync(BASELINE, 'utf8'));
const figures: Figure[] = [];
for (const section of SECTIONS) {
  let found = await section();
  for (const figure of found) console.log(figureLine(figure));
  // What seems slower is measured once more before it is called so.
  const names = new Set(found.map(({ name }) => name));
  const known = option === '--check' ? Object.entries(kept()).filter(([name]) => names.has(name)) : [];
  if (known.length > 0 && whatGotSlower(Object.fromEntries(known), found).length > 0)
    found = betterOf(found, await section());
  figures.push(...found);
}

if (option === '--keep') {
  writeFileSync(BASELINE, `${JSON.stringify(baselineOf(figures), null, 2)}\n`);
  console.log(`${BASELINE} is written.`);
}
if (option === '--check') {
  const complaints = whatGotSlower(kept(), figures);
  for (const complaint of complaints) console.log(complaint);
  if (complaints.length === 0)
    console.log(`Nothing is slower or larger than the baseline by more than ${100 * MARGIN} %.`);
  process.exitCode = complaints.length === 0 ? 0 : 1;
}
