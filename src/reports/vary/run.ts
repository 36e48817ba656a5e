import { FACTS, ROW_VALUES } from '../../advice/builds/build-readings.ts';
import { gridPoint, gridSize } from '../../advice/builds/vary.ts';
import type { AnswerOptions } from '../../cli/commands/shared-options.ts';
import type { Io } from '../../cli/io.ts';
import { present } from '../../cli/output/present.ts';
import { progressBar } from '../../cli/output/progress.ts';
import { readNamedFile } from '../../cli/world/named-file.ts';
import { openSetup } from '../../setup/open.ts';
import { SetupError } from '../../setup/problem.ts';
import { readSetup } from '../../setup/read.ts';
import { optionQuantity } from '../asked/quantity.ts';
import { QuestionError } from '../asked/question-error.ts';
import { FACT_KEYS, ROW_KEYS, renamed } from '../compare/json-keys.ts';
import { inUnits } from '../session.ts';
import { ownThread } from '../tasks.ts';
import { type VariedKey, variedKey } from './axes.ts';
import type { Cell, VaryJob } from './cells.ts';
import type { Varied } from './findings.ts';
import { outputsOf } from './outputs.ts';
import { varyTable, varyText } from './text.ts';

export interface VaryOptions extends AnswerOptions {
  readonly over: readonly string[];
  readonly show: string;
  readonly at: string;
  readonly plot?: string;
  readonly crosswind: string;
}

/** A table or a plot of three keys cannot be read. */
const MOST_KEYS = 2;
/** Fewer combinations are done before threads have started. */
const WORTH_THREADS = 64;
/** Jobs for each thread, so that the bar moves and a slow one does not hold up the rest. */
const JOBS_PER_THREAD = 8;

export async function runVary(io: Io, path: string, options: VaryOptions): Promise<void> {
  const text = readNamedFile(io, path);
  const session = inUnits(openSetup(text, path, options), options.units);
  const axes = options.over.map(variedKey);
  if (axes.length > MOST_KEYS)
    throw new QuestionError(
      `{over}: ${axes.length} keys at once`,
      `Write {over} at most ${MOST_KEYS} times.`,
    );
  requireValues(text, path, axes);
  const ranges = options.at
    .split(',')
    .map((range) => optionQuantity('at', range.trim(), 'length') as number)
    .toSorted((a, b) => a - b);
  const outputs = outputsOf(options.show, ranges, session.units);
  const plotted =
    options.plot === undefined ? outputs.slice(-1) : outputsOf(options.plot, ranges, session.units);
  const cells = await swept(io, {
    text,
    path,
    uncalibrated: options.uncalibrated ?? false,
    axes: axes.map(({ name, values }) => ({ name, values })),
    ranges,
    crosswind: optionQuantity('crosswind', options.crosswind, 'speed'),
  });
  const varied: Varied = { session, axes, ranges, outputs, plotted, cells };
  present(io, options, {
    text: () => varyText(varied, io),
    json: () => json(varied),
    table: () => varyTable(varied),
  });
}

/** So many combinations of a doubtful value are tried before it is refused. */
const TRIED = 50;

/**
 * Every value is held to the limits of its key before anything is computed; one that only its partner makes possible may stay.
 *
 * @throws SetupError for a value that no combination of the sweep allows
 */
function requireValues(text: string, path: string, axes: readonly VariedKey[]): void {
  const refusal = (point: readonly string[], keys: readonly VariedKey[]): SetupError | null => {
    try {
      readSetup(
        text,
        path,
        keys.map(({ name }, i) => ({ path: name.split('.'), value: point[i] ?? '' })),
      );
      return null;
    } catch (error) {
      if (error instanceof SetupError) return error;
      throw error;
    }
  };
  const points = Array.from({ length: gridSize(axes) }, (_, i) => gridPoint(axes, i));
  for (const [k, axis] of axes.entries())
    for (const value of axis.values) {
      const alone = refusal([value], [axis]);
      if (alone === null) continue;
      const tried = points.filter((point) => point[k] === value).slice(0, TRIED);
      if (tried.every((point) => refusal(point, axes) !== null)) throw alone;
    }
}

async function swept(io: Io, job: Omit<VaryJob, 'from' | 'to'>): Promise<readonly Cell[]> {
  const count = gridSize(job.axes);
  const pool = count < WORTH_THREADS ? ownThread : ((await io.pool?.()) ?? ownThread);
  const size = Math.ceil(count / (pool.threads * JOBS_PER_THREAD));
  const jobs = Array.from(
    { length: Math.ceil(count / size) },
    (_, i): VaryJob => ({
      ...job,
      from: i * size,
      to: Math.min(count, (i + 1) * size),
    }),
  );
  const bar = progressBar(io, 'varying', jobs.length);
  try {
    return (await pool.map('vary', jobs, bar.done)).flat();
  } finally {
    bar.end();
  }
}

const json = ({ session, axes, ranges, cells }: Varied): object => ({
  title: session.title,
  calibrated: session.calibrated,
  over: axes.map(({ name, values }) => ({ key: name, values })),
  rows: cells.map((cell, i) => {
    const point = gridPoint(axes, i);
    const set = Object.fromEntries(axes.map(({ name }, k) => [name, point[k]]));
    if ('failure' in cell) return { set, failure: cell.failure };
    const { facts, rows } = cell;
    return {
      set,
      failure: null,
      ...renamed(FACTS, FACT_KEYS, facts, (value) => value),
      rows: rows.map((row, k) => ({
        range_m: ranges[k],
        ...renamed(ROW_VALUES, ROW_KEYS, row, (value) => value),
      })),
    };
  }),
});
