import process from 'node:process';
import { setFlagsFromString } from 'node:v8';
import { runInNewContext } from 'node:vm';
import { at } from '../../src/numerics/at.ts';

/** What a piece of work costs, timed in turn with others. */
export interface Timed {
  /** Processor time, the median over the rounds, ms. */
  readonly time: number;
  /** That over the first work's in the same round, so that both met the same machine; the median over the rounds. */
  readonly ratio: number;
  /** Allocated, bytes. */
  readonly bytes: number;
}

const ROUNDS = 41;
/** Of one piece of work in a round, ms: long against the clock, short against a drift of the machine's speed. */
const BATCH = 4;
/** Of each piece of work before anything is timed, ms: the engine compiles what it has seen often. */
const WARMING = 400;

/** Of all threads of the process so far, ms: what other programs take meanwhile does not count. */
export const processorTime = (): number => {
  const { user, system } = process.cpuUsage();
  return (user + system) / 1000;
};

const repeat = (work: () => void, times: number): void => {
  for (let i = 0; i < times; i += 1) work();
};

function timeOf(work: () => void, times: number): number {
  const start = processorTime();
  repeat(work, times);
  return processorTime() - start;
}

/** Runs the works in turn and says what one run of each costs, warm. The usual libraries for this run one work after another. */
export function interleaved(works: readonly (() => void)[]): readonly Timed[] {
  const batches = works.map((work) => {
    for (let spent = 0; spent < WARMING; ) spent += timeOf(work, 1);
    let times = 1;
    while (timeOf(work, times) < BATCH) times *= 2;
    return { work, times, spent: [] as number[] };
  });
  for (let round = 0; round < ROUNDS; round += 1)
    for (const { work, times, spent } of batches) spent.push(timeOf(work, times) / times);
  const { spent: first } = at(batches, 0);
  return batches.map(({ work, times, spent }) => ({
    time: median(spent),
    ratio: median(spent.map((time, round) => time / at(first, round))),
    bytes: allocatedBy(work, Math.min(times, FEW)),
  }));
}

/** The middle value; of an even number the upper of the two. */
export const median = (values: readonly number[]): number =>
  at(
    values.toSorted((a, b) => a - b),
    Math.floor(values.length / 2),
  );

/** Runs whose allocations are counted together: few enough that the engine collects nothing meanwhile. */
const FEW = 16;

/** Bytes that one run of the work allocates: what the heap grows by after a collection. */
function allocatedBy(work: () => void, times: number): number {
  return median(
    Array.from({ length: 9 }, () => {
      collect();
      const before = process.memoryUsage().heapUsed;
      repeat(work, times);
      return (process.memoryUsage().heapUsed - before) / times;
    }),
  );
}

/** The engine's own collection, which a program does not see unless it asks. */
const collect = (): void => {
  gc();
};
setFlagsFromString('--expose-gc');
const gc: () => void = runInNewContext('gc');
