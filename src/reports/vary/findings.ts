import { gridPoint, gridSize } from '../../advice/builds/vary.ts';
import { at } from '../../numerics/at.ts';
import type { OpenSetup } from '../../setup/open.ts';
import { SetupError } from '../../setup/problem.ts';
import { readSetup } from '../../setup/read.ts';
import { QuestionError } from '../asked/question-error.ts';
import { type Occasion, spread } from '../occasion.ts';
import { ownThread } from '../tasks.ts';
import type { VariedKey } from './axes.ts';
import type { Cell, VaryJob } from './cells.ts';

/** A sweep and what came of it, a cell for every combination, the last key running fastest. */
export interface VaryFindings {
  readonly axes: readonly VariedKey[];
  /** Rising, m. */
  readonly ranges: readonly number[];
  readonly cells: readonly Cell[];
}

/** A table or a plot of three keys cannot be read. */
const MOST_KEYS = 2;
/** Fewer combinations are done before threads have started. */
const WORTH_THREADS = 64;
/** Jobs for each thread, so that a bar moves and a slow one does not hold up the rest. */
const JOBS_PER_THREAD = 8;

/** Some minutes of work. */
const MOST_COMBINATIONS = 5000;
/** A column each. */
const MOST_RANGES = 50;

/** @param crosswind m/s, square to the line of sight, for the drift */
export async function varyFindings(
  { text, name, uncalibrated }: OpenSetup,
  { axes, ranges, crosswind }: Pick<VaryFindings, 'axes' | 'ranges'> & { readonly crosswind: number },
  occasion: Occasion,
): Promise<VaryFindings> {
  if (axes.length > MOST_KEYS)
    throw new QuestionError(
      `{over}: ${axes.length} keys at once`,
      `Write {over} at most ${MOST_KEYS} times.`,
    );
  const [one, other] = axes;
  if (one !== undefined && one.name === other?.name)
    throw new QuestionError(`{over}: ${one.name} is varied twice`, 'Write all of its values in one {over}.');
  const count = gridSize(axes);
  if (count > MOST_COMBINATIONS)
    throw new QuestionError(
      `{over}: that would be ${count} combinations`,
      `Write values that give at most ${MOST_COMBINATIONS}.`,
    );
  if (ranges.length > MOST_RANGES)
    throw new QuestionError(`{at}: these are ${ranges.length} ranges`, `Write at most ${MOST_RANGES}.`);
  requireValues(text, name, axes);
  const job = { text, path: name, uncalibrated, axes: axes.map(axisOf), ranges, crosswind };
  return { axes, ranges, cells: await swept(occasion, job) };
}

const axisOf = ({ name, values }: VariedKey) => ({ name, values });

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
        keys.map(({ name }, i) => ({ path: name.split('.'), value: at(point, i) })),
      );
      return null;
    } catch (error) {
      if (error instanceof SetupError) return error;
      throw error;
    }
  };
  for (const [k, axis] of axes.entries())
    for (const value of axis.values) {
      const alone = refusal([value], [axis]);
      if (alone === null) continue;
      const fixed = axes.map((each, i) => (i === k ? { ...each, values: [value] } : each));
      const points = Array.from({ length: Math.min(TRIED, gridSize(fixed)) }, (_, i) => gridPoint(fixed, i));
      if (points.every((point) => refusal(point, axes) !== null)) throw alone;
    }
}

async function swept(occasion: Occasion, job: Omit<VaryJob, 'from' | 'to'>): Promise<readonly Cell[]> {
  const count = gridSize(job.axes);
  const pool = count < WORTH_THREADS ? ownThread : await occasion.pool();
  const size = Math.ceil(count / (pool.threads * JOBS_PER_THREAD));
  const jobs = Array.from(
    { length: Math.ceil(count / size) },
    (_, i): VaryJob => ({ ...job, from: i * size, to: Math.min(count, (i + 1) * size) }),
  );
  return (await spread({ ...occasion, pool: async () => pool }, 'varying', 'vary', jobs)).flat();
}
