/** Median and least time of a piece of work, ms, over batches that are long against the clock. */
export interface Timed {
  readonly median: number;
  readonly least: number;
}

const BATCHES = 15;

/** Warm both up, then time them in turn, so that a drift of the machine's speed meets both alike. */
export function interleaved(works: readonly (() => void)[], repeats: number): readonly Timed[] {
  for (const work of works) for (let i = 0; i < repeats; i += 1) work();
  const times = works.map((): number[] => []);
  for (let batch = 0; batch < BATCHES; batch += 1)
    for (const [which, work] of works.entries()) {
      const start = performance.now();
      for (let i = 0; i < repeats; i += 1) work();
      times[which]?.push((performance.now() - start) / repeats);
    }
  return times.map(summary);
}

export function summary(times: readonly number[]): Timed {
  const sorted = times.toSorted((a, b) => a - b);
  return { median: sorted[Math.floor(sorted.length / 2)] ?? Number.NaN, least: sorted[0] ?? Number.NaN };
}
