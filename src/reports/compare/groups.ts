import type { Comparison } from '../../advice/builds/comparison.ts';
import type { TunedBuild } from '../../advice/builds/tuned-build.ts';
import { type PairedGroup, pairedGroups } from '../../advice/scatter/paired-groups.ts';
import { type ScatterJob, scatterQuestion } from '../../advice/scatter/scatter.ts';
import { si } from '../../quantities/quantity.ts';
import { straightLaunch } from '../../sight/shot.ts';
import { type Occasion, spread } from '../occasion.ts';
import { USUAL_DOZEN } from '../scatter/usual-dozen.ts';
import { variationFrom } from '../scatter/variation.ts';

/** Group sizes of a dozen by range, base first; null for a build whose parts are not known. */
export type Groups = readonly (readonly PairedGroup[] | null)[];

export const GROUP = 12;
/** The same numbers for every build, so that differences are those of the builds. */
const SEED = 1;
/** Arrows in one job: some 10 ms of work. */
const STRETCH = 48;

/** Shoot every build with the same sorted dozens from the same steady bow. */
export async function compareScatter(
  occasion: Occasion,
  comparison: Comparison,
  arrows: number,
): Promise<Groups> {
  const { base, others, questions } = comparison;
  const builds = [base.build, ...others.map(({ readings }) => readings.build)];
  const jobs = builds.map((build) => jobsOf(build, questions.ranges, arrows));
  const answers = await spread(occasion, 'shooting', 'scatter', jobs.flat());
  let next = 0;
  const hits = jobs.map((list) => {
    const parts = answers.slice(next, next + list.length);
    next += list.length;
    return list.length === 0 ? null : Float64Array.from(parts.flatMap((part) => [...part]));
  });
  const [first = null] = hits;
  return hits.map((found) =>
    found === null || first === null ? null : pairedGroups(first, found, questions.ranges.length, GROUP),
  );
}

function jobsOf(build: TunedBuild, ranges: readonly number[], arrows: number): readonly ScatterJob[] {
  const { arrow, rig, energy } = build;
  if (arrow.parts === null || arrow.surfaces === null || arrows < GROUP) return [];
  const question = scatterQuestion(arrow, rig.conditions, {
    launch: straightLaunch(rig),
    virtualMass: energy.virtualMass,
    variation: variationFrom(USUAL_DOZEN, arrow.flying.balance),
    seed: SEED,
    ranges: ranges.map((range) => si<'m'>(range)),
  });
  return Array.from({ length: Math.ceil(arrows / STRETCH) }, (_, i): ScatterJob => {
    const from = i * STRETCH;
    return { question, only: null, from, to: Math.min(arrows, from + STRETCH) };
  });
}
