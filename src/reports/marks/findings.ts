import { type MarkUncertainty, markUncertainty } from '../../calibration/mark-uncertainty.ts';
import { at } from '../../numerics/at.ts';
import { type Metres, si } from '../../quantities/quantity.ts';
import type { OpenSetup } from '../../setup/open.ts';
import { type Mark, marksFor, settingsFor } from '../../sight/marks.ts';
import { asFarAsItGoes, type Reach } from '../../sight/reach.ts';
import type { Rig } from '../../sight/rig.ts';

/** A mark and how sure it is. */
export interface SureMark {
  readonly mark: Mark;
  readonly uncertainty: MarkUncertainty;
}

/** How sure each of the marks is. */
export const sureOf = ({ rows }: MarksFindings): readonly MarkUncertainty[] =>
  rows.map(({ uncertainty }) => uncertainty);

/** Whether marks can be given as readings of the sight's scale. */
export type ScaleState = 'known' | 'not in the file' | 'not known yet';

/** The mark of every range asked for, as far as the arrow gets. */
export interface MarksFindings extends Reach {
  readonly rows: readonly SureMark[];
  readonly scale: ScaleState;
  /** The first whole range at which the arrow would touch the sight; null when it never does. */
  readonly touching: Metres | null;
}

export interface MarksAsked {
  /** Rising, m. */
  readonly ranges: readonly Metres[];
  /** What a whole range is counted in, m: a yard or a metre. */
  readonly whole: Metres;
  /** Those of the ranges reached that need a mark: the first and the last at least. */
  readonly needed: (reached: readonly Metres[]) => readonly Metres[];
}

export function marksFindings(opened: OpenSetup, { ranges, whole, needed }: MarksAsked): MarksFindings {
  const { rig } = opened.calibration;
  const { solved: rows, ...reach } = asFarAsItGoes(rig, ranges, (reached) =>
    sureMarks(opened, needed(reached)),
  );
  return { rows, ...reach, scale: scaleOf(opened), touching: touchingFrom(rig, rows, whole) };
}

const scaleOf = ({ setup, calibration }: OpenSetup): ScaleState => {
  if (calibration.rig.scale !== null) return 'known';
  return setup.sight.scale === undefined ? 'not in the file' : 'not known yet';
};

/** The marks of a calibrated rig with their uncertainties. */
export function sureMarks(
  { calibration }: Pick<OpenSetup, 'calibration'>,
  ranges: readonly Metres[],
): readonly SureMark[] {
  const table = marksFor(calibration.rig, ranges);
  const uncertainty = markUncertainty(calibration, table);
  return table.marks.map((mark, i) => ({ mark, uncertainty: at(uncertainty, i) }));
}

/**
 * Where the tape must end because the arrow would touch the sight, looked for at every whole range from the first mark to the
 * last; null when it never does.
 *
 * @param rows by rising range
 * @param whole what a whole range is counted in, m: a yard or a metre
 */
export function touchingFrom(rig: Rig, rows: readonly SureMark[], whole: Metres): Metres | null {
  const [nearest, last] = [rows[0], rows.at(-1)];
  if (nearest === undefined || last === undefined) return null;
  if (rows.every(({ mark }) => mark.clearance >= 0)) return null;
  const first = Math.ceil(nearest.mark.range / whole);
  const count = Math.max(0, Math.floor(last.mark.range / whole) - first + 1);
  if (count === 0) return null;
  const ranges = Array.from({ length: count }, (_, i) => si<'m'>((first + i) * whole));
  const touching = settingsFor(rig, ranges).find(({ clearance, rising }) => clearance < 0 && !rising);
  return touching?.range ?? null;
}
