import type { Round } from '../../advice/tuning/next-step.ts';
import type { TuningEntry } from '../../setup/schema/schema.ts';
import { restId, restMoves } from './rest-place.ts';

/** The rounds of a log, as far as the order of steps needs them. */
export function roundsOf(log: readonly TuningEntry[]): readonly Round[] {
  const places = restMoves(log);
  return log.map(({ date, step, changed = [], extension }, i) => ({
    date,
    step,
    changed,
    rest: restId(places, i),
    extension: step === 'torque' && extension !== undefined ? extension : null,
  }));
}
