import type { Arrow } from '../../arrow/arrow.ts';
import type { Bow } from '../../bow/bow.ts';
import type { Calibration } from '../../calibration/fit.ts';
import type { OpenSetup } from '../open.ts';
import type { SetupFile } from '../schema/schema.ts';
import { otherShots, powerStrokeOf, virtualMassPrior } from './assemble-launch.ts';
import { assembleBuild, type Variant } from './assemble-variant.ts';

/** The bow of a setup file. */
export const assembleBow = ({ bow, launch }: Pick<SetupFile, 'bow' | 'launch'>): Bow => ({
  // Files with the same bow, word for word, are about one bow.
  identity: JSON.stringify(bow),
  powerStroke: powerStrokeOf(bow),
  peakDraw: bow.peak_draw_weight ?? null,
  virtualMass: virtualMassPrior(bow),
  otherShots: otherShots(bow),
  rated: launch.speed === 'rated',
});

/** A bow with the arrow it is tuned for, and other arrows that it might shoot. */
export interface BowAndArrows extends Bow {
  /** Of the build it is tuned for. */
  readonly name: string;
  readonly arrow: Arrow;
  readonly calibration: Calibration;
  readonly candidates: readonly Variant[];
}

/** The bow of an opened setup with arrows that it might shoot. */
export const bowWith = (
  { setup, assembly, calibration, title }: OpenSetup,
  candidates: readonly Variant[],
): BowAndArrows => ({
  ...assembleBow(setup),
  name: title,
  arrow: assembly.arrow,
  calibration,
  candidates,
});

/** The bow with the builds that its file lists. */
export const bowWithBuilds = (open: OpenSetup): BowAndArrows =>
  bowWith(
    open,
    (open.setup.builds ?? []).map((build) => assembleBuild(open.setup, open.assembly, build)),
  );
