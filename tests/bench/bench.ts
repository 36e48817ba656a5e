import { flightLines } from './flight-bench.ts';
import { rigidLines } from './rigid-bench.ts';
import { startUpLines } from './start-up-bench.ts';

/** `npm run bench`: figures beside their targets. Times drift with the machine; the ratios, taken in one run, are what counts. */
for (const section of [flightLines, rigidLines, startUpLines])
  for (const line of await section()) console.log(line);
