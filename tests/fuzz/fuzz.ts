/**
 * More cases than the tests have time for: `npm run fuzz -- --minutes 10`.
 *
 *   --seed N      begin as an earlier run did; without it a random one, which is printed first
 *   --minutes N   stop after so long (1)
 *   --count N     stop after so many cases
 *   --kind WORD   only readings, answers, lines, fields or options
 *
 * A counter-example is made as small as it gets, printed with what is wrong and with its place among the tests; then the run
 * goes on.
 */
import process from 'node:process';
import { parseArgs } from 'node:util';
import fc from 'fast-check';
import { at } from '../../src/numerics/at.ts';
import { readSetup } from '../../src/setup/read.ts';
import { ASKED } from './asked-or-refused.ts';
import { commandLine } from './command-lines.ts';
import { satOrAstray, sitting } from './field-actions.ts';
import { openedAndAsked } from './opened-and-asked.ts';
import { optionsSaid, saidOrAstray } from './page-options.ts';
import { readOrRefused } from './read-or-refused.ts';
import { brokenText, extremeText } from './setup-texts.ts';
import { typedOrRefused } from './typed-or-refused.ts';
import { watchForHangs } from './watch-for-hangs.ts';

const { values: given } = parseArgs({
  options: {
    seed: { type: 'string', default: String(Math.floor(Math.random() * 2 ** 31)) },
    minutes: { type: 'string', default: '1' },
    count: { type: 'string', default: 'Infinity' },
    kind: { type: 'string' },
  },
});
const seed = Number(given.seed);
const say = (words: string): boolean => process.stdout.write(`${words}\n`);
say(`Seed ${seed}`);

const isWatched = watchForHangs();

/** A kind of case: how to make one, try it, and show it; how many make a round. */
interface Kind {
  readonly name: string;
  readonly round: number;
  readonly check: (seed: number, numRuns: number, until: number) => Promise<Outcome>;
}
interface Outcome {
  readonly cases: number;
  /** What is to be kept, and why it is wrong; null when nothing is. */
  readonly found: { readonly text: string; readonly wrong: string } | null;
}

function kind<T>(
  name: string,
  round: number,
  cases: fc.Arbitrary<T>,
  attempt: (value: T) => unknown,
  shown: (value: T) => string,
): Kind {
  const property = fc.asyncProperty(cases, async (value) => {
    isWatched(shown(value));
    await attempt(value);
  });
  return {
    name,
    round,
    check: async (from, numRuns, until) => {
      const result = await fc.check(property, {
        seed: from,
        numRuns,
        interruptAfterTimeLimit: Math.max(1, until - Date.now()),
        markInterruptAsFailure: false,
      });
      const [value] = result.counterexample ?? [];
      if (!result.failed || value === undefined) return { cases: result.numRuns, found: null };
      const { errorInstance } = result;
      const wrong =
        errorInstance instanceof Error
          ? (errorInstance.stack ?? errorInstance.message)
          : String(errorInstance);
      return { cases: result.numRuns, found: { text: shown(value), wrong } };
    },
  };
}

const KINDS: readonly Kind[] = [
  kind('readings', 500, brokenText, (text) => readOrRefused(text, readSetup), String),
  kind(
    'answers',
    30,
    fc.tuple(extremeText, fc.nat(ASKED.length - 1)),
    ([text, turn]) => openedAndAsked(text, turn),
    ([text]) => text,
  ),
  kind('lines', 100, commandLine, typedOrRefused, (argv) => JSON.stringify(argv)),
  kind('fields', 100, sitting, satOrAstray, (sat) => JSON.stringify(sat)),
  kind('options', 100, optionsSaid, saidOrAstray, (asked) => JSON.stringify(asked)),
];
const kinds = given.kind === undefined ? KINDS : KINDS.filter(({ name }) => name === given.kind);

/** Of one and the same fault one counter-example is enough: its first words, numbers and what is quoted left out. */
const faultOf = (wrong: string): string => wrong.replaceAll(/"[^"]*"|\d[\d.e+-]*/g, '').slice(0, 100);

/** Where a counter-example is read again by every run of the tests. */
const KEPT: Readonly<Record<string, string>> = {
  lines: 'as a line of tests/fuzz/kept/command-lines.json',
  fields: 'as a line of tests/fuzz/kept/sittings.json',
  options: 'as a line of tests/fuzz/kept/page-options.json',
};

const until = Date.now() + 60_000 * Number(given.minutes);
const faults = new Set<string>();
let cases = 0;
for (let round = 0; Date.now() < until && cases < Number(given.count); round += 1) {
  const { name, round: size, check } = at(kinds, round % kinds.length);
  const outcome = await check(seed + round, Math.min(size, Number(given.count) - cases), until);
  cases += outcome.cases;
  if (outcome.found === null) continue;
  const { text, wrong } = outcome.found;
  if (faults.has(faultOf(wrong))) continue;
  faults.add(faultOf(wrong));
  say(`\n${name}, seed ${seed + round}: ${wrong}\n${text}\n`);
  say(`Keep it ${KEPT[name] ?? 'as a file in tests/fuzz/kept, named for what was wrong'}.`);
}
say(`${cases} cases, ${faults.size} faults`);
process.exit(faults.size === 0 ? 0 : 1);
