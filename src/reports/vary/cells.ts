import { type BuildReadings, buildReadings } from '../../advice/builds/build-readings.ts';
import { type TunedBuild, tunedBuilds } from '../../advice/builds/tuned-build.ts';
import { type Axis, sweepRange } from '../../advice/builds/vary.ts';
import { speedRatio } from '../../bow/speed-ratio.ts';
import { NumericalError } from '../../numerics/numerical-error.ts';
import { DomainError } from '../../quantities/domain-error.ts';
import { si } from '../../quantities/quantity.ts';
import { assembleBow, bowWith } from '../../setup/assemble/assemble-bow.ts';
import { assembleVariant } from '../../setup/assemble/assemble-variant.ts';
import { type OpenSetup, openSetup } from '../../setup/open.ts';
import { SetupError } from '../../setup/problem.ts';
import { type Override, readSetup } from '../../setup/read.ts';
import type { SetupFile } from '../../setup/schema/schema.ts';
import type { Rig } from '../../sight/rig.ts';

/** A stretch of a sweep, as plain data that another thread can be sent. */
export interface VaryJob {
  readonly text: string;
  readonly path: string;
  readonly uncalibrated: boolean;
  /** Key paths and the texts they take. */
  readonly axes: readonly Axis<string>[];
  readonly from: number;
  readonly to: number;
  readonly ranges: readonly number[];
  readonly crosswind: number;
}

/** What came of one combination, or why nothing did: an arrow that falls short, parts that contradict each other. */
export type Cell = BuildReadings | { readonly failure: string };

/** Every combination of the stretch, in order. */
export function varyCells(job: VaryJob): readonly Cell[] {
  const { text, path, uncalibrated, axes, ranges, crosswind } = job;
  const base = openSetup(text, path, { uncalibrated });
  return sweepRange(axes, job, (point) => {
    const overrides = axes.map(({ name }, i): Override => ({ path: name.split('.'), value: point[i] ?? '' }));
    try {
      const build = varied(base, readSetup(text, path, overrides), overrides);
      if (build === null) return { failure: NO_DRAW_WEIGHT };
      return buildReadings(build, build.rig, { ranges, crosswind });
    } catch (error) {
      if (error instanceof SetupError) return { failure: error.problems[0]?.message ?? error.message };
      if (error instanceof NumericalError || error instanceof DomainError) return { failure: error.message };
      throw error;
    }
  });
}

/** Nothing says what the bow was set to when its launch speed was measured. */
const NO_DRAW_WEIGHT =
  'how much faster the bow is at another draw weight cannot be said: the file does not name the one ' +
  'that the launch speed was measured at; write bow.peak_draw_weight';

/** Null when it cannot be said how fast the bow is in this setting. */
function varied(base: OpenSetup, variant: SetupFile, overrides: readonly Override[]): TunedBuild | null {
  const isSet = (key: string): boolean => overrides.some(({ path }) => path.join('.').startsWith(key));
  // What the sweep sets itself is not worked out from the bow.
  const faster = isSet('launch.') ? 1 : speedRatio(assembleBow(base.setup), assembleBow(variant));
  if (faster === null) return null;
  const assembled = assembleVariant(base.setup, base.assembly, variant, {
    name: 'varied',
    own: {
      mass: isSet('arrow.mass'),
      balance: isSet('arrow.balance'),
      length: isSet('arrow.length'),
      drag: isSet('arrow.drag_coefficient'),
      speed: isSet('launch.'),
    },
  });
  const bow = { ...bowWith({ ...base, setup: variant }, [assembled]), name: base.title };
  const [, build] = tunedBuilds(bow);
  if (build === undefined) throw new RangeError('a bow with one candidate has two builds');
  return { ...build, rig: asSet(build.rig, assembled.rig, faster, isSet) };
}

/** What the sweep sets itself counts as set, and is not calibrated. */
const asSet = (rig: Rig, set: Rig, faster: number, isSet: (key: string) => boolean): Rig => ({
  ...rig,
  launchSpeed: si(rig.launchSpeed * faster),
  geometry: isSet('bow.peep_height')
    ? { ...rig.geometry, peepHeight: set.geometry.peepHeight }
    : rig.geometry,
});
