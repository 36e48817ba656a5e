import { type BuildReadings, buildReadings } from '../../advice/builds/build-readings.ts';
import { type TunedBuild, tunedBuilds } from '../../advice/builds/tuned-build.ts';
import { type Axis, sweepRange } from '../../advice/builds/vary.ts';
import { NumericalError } from '../../numerics/numerical-error.ts';
import { DomainError } from '../../quantities/domain-error.ts';
import { si } from '../../quantities/quantity.ts';
import { powerStroke } from '../../setup/assemble/assemble-launch.ts';
import { assembleVariant } from '../../setup/assemble/assemble-variant.ts';
import { type OpenSetup, openSetup } from '../../setup/open.ts';
import { SetupError } from '../../setup/problem.ts';
import { type Override, readSetup } from '../../setup/read.ts';
import type { SetupFile } from '../../setup/schema/schema.ts';
import type { Rig } from '../../sight/rig.ts';
import { bowOf } from '../compare/bow-of.ts';

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
      return buildReadings(build, build.rig, { ranges, crosswind });
    } catch (error) {
      if (error instanceof SetupError) return { failure: error.problems[0]?.message ?? error.message };
      if (error instanceof NumericalError || error instanceof DomainError) return { failure: error.message };
      throw error;
    }
  });
}

function varied(base: OpenSetup, variant: SetupFile, overrides: readonly Override[]): TunedBuild {
  const isSet = (key: string): boolean => overrides.some(({ path }) => path.join('.').startsWith(key));
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
  const bow = { ...bowOf({ ...base, setup: variant }, [assembled]), name: base.title };
  const [, build] = tunedBuilds(bow);
  if (build === undefined) throw new RangeError('a bow with one candidate has two builds');
  return { ...build, rig: asSet(build.rig, assembled.rig, base.setup, variant, isSet) };
}

/** What the sweep sets itself counts as set, and is not calibrated; energy follows force and way of the string. */
function asSet(
  rig: Rig,
  set: Rig,
  base: SetupFile,
  variant: SetupFile,
  isSet: (key: string) => boolean,
): Rig {
  const faster = isSet('launch.') ? 1 : Math.sqrt(energyRatio(base, variant));
  return {
    ...rig,
    launchSpeed: si(rig.launchSpeed * faster),
    geometry: isSet('bow.peep_height')
      ? { ...rig.geometry, peepHeight: set.geometry.peepHeight }
      : rig.geometry,
  };
}

/** Stored energy over that of the base: peak force times power stroke, for one shape of the draw curve. */
function energyRatio({ bow: base }: SetupFile, { bow }: SetupFile): number {
  const force = (bow.peak_draw_weight ?? 1) / (base.peak_draw_weight ?? bow.peak_draw_weight ?? 1);
  return force * (powerStroke(bow) / powerStroke(base));
}
