import { type ScatterJob, type ScatterQuestion, scatterQuestion } from '../../advice/scatter/scatter.ts';
import { CAUSES, type Cause, type Variation } from '../../advice/scatter/scatter-causes.ts';
import { type Hits, type RangeScatter, scatterByRange } from '../../advice/scatter/scatter-groups.ts';
import { otherVanes, withUsualBlades } from '../../arrow/parts/other-parts.ts';
import type { ArrowParts, Vanes } from '../../arrow/parts/parts.ts';
import { at } from '../../numerics/at.ts';
import type { Metres } from '../../quantities/quantity.ts';
import { virtualMassPrior } from '../../setup/assemble/assemble-launch.ts';
import type { OpenSetup } from '../../setup/open.ts';
import { straightLaunch } from '../../sight/shot.ts';
import { QuestionError } from '../asked/question-error.ts';
import { changedBuild, conditionsWith, partsOf, requirePointFirst } from '../changed-build.ts';
import { type Occasion, spread } from '../occasion.ts';

/** What is asked: the differences within a dozen, and how many arrows are shot to tell what they do. */
export interface ScatterQuestions {
  readonly ranges: readonly Metres[];
  readonly variation: Variation;
  /** Arrows in a group. */
  readonly group: number;
  /** Arrows shot for each cause, and for all of them together. */
  readonly arrows: number;
  readonly seed: number;
  /** With a common broadhead in place of the point. */
  readonly broadhead: boolean;
}

/** What one fletching makes of the same differences. */
export interface VaneScatter {
  readonly vanes: Vanes;
  /** With blades in front. */
  readonly bladed: boolean;
  readonly ranges: readonly RangeScatter[];
}

export interface ScatterFindings {
  readonly asked: ScatterQuestions;
  /** The setup's own vanes. */
  readonly own: VaneScatter;
  /** Straight vanes beside helical ones, helical beside straight. */
  readonly other: VaneScatter;
}

/** Each with the same random differences. */
export const bothOf = ({ own, other }: ScatterFindings): readonly VaneScatter[] => [own, other];

/** @throws QuestionError for an arrow without parts or vanes, and for fewer arrows than one group */
export async function scatterFindings(
  opened: OpenSetup,
  asked: ScatterQuestions,
  occasion: Occasion,
): Promise<ScatterFindings> {
  const own = partsOf(opened, 'scatter');
  const parts = asked.broadhead ? withUsualBlades(own) : own;
  const { vanes } = parts;
  if (vanes === undefined)
    throw new QuestionError('scatter: the arrow has no vanes', 'Write arrow.parts.vanes.');
  if (asked.arrows < asked.group)
    throw new QuestionError(
      `{arrows}: ${asked.arrows} are fewer than one group of ${asked.group}`,
      `Write {arrows} ${100 * asked.group}.`,
    );
  const { ranges, group } = asked;
  const fletchings = [vanes, otherVanes(vanes)];
  const questions = fletchings.map((fletching) =>
    questionOf(opened, { ...parts, vanes: fletching }, ranges, asked),
  );
  const hits = await shoot(occasion, questions, asked.arrows);
  const bladed = parts.point.shape === 'fixed_blade';
  const found = fletchings.map(
    (fletching, i): VaneScatter => ({
      vanes: fletching,
      bladed,
      ranges: scatterByRange(at(hits, i), ranges, group),
    }),
  );
  return { asked, own: at(found, 0), other: at(found, 1) };
}

function questionOf(
  opened: OpenSetup,
  parts: ArrowParts,
  ranges: readonly Metres[],
  { variation, seed }: Pick<ScatterQuestions, 'variation' | 'seed'>,
): ScatterQuestion {
  const own = opened.assembly.arrow;
  const same = parts.vanes === own.parts?.vanes && parts.point === own.parts?.point;
  const arrow = same ? own : changedBuild(opened, parts);
  requirePointFirst(arrow, 'scatter');
  return scatterQuestion(arrow, conditionsWith(opened, arrow), {
    launch: straightLaunch(opened.calibration.rig),
    virtualMass: virtualMassPrior(opened.setup.bow).value,
    variation,
    seed,
    ranges,
  });
}

/** Arrows in one job: some 10 ms of work, so that the bar moves and a Ctrl-C is heard. */
const STRETCH = 50;

/** All causes and each alone, for every question, spread over the cores. */
async function shoot(
  occasion: Occasion,
  questions: readonly ScatterQuestion[],
  arrows: number,
): Promise<readonly Hits[]> {
  const causes: readonly (Cause | null)[] = [null, ...CAUSES];
  const stretches = Math.ceil(arrows / STRETCH);
  const jobs = questions.flatMap((question) =>
    causes.flatMap((only) =>
      Array.from({ length: stretches }, (_, i): ScatterJob => {
        const from = i * STRETCH;
        return { question, only, from, to: Math.min(arrows, from + STRETCH) };
      }),
    ),
  );
  const answers = await spread(occasion, 'shooting', 'scatter', jobs);
  const joined = (run: number): Float64Array =>
    Float64Array.from(answers.slice(run * stretches, (run + 1) * stretches).flatMap((part) => [...part]));
  return questions.map((_, q) => {
    const hits = (only: Cause | null) => joined(q * causes.length + causes.indexOf(only));
    return {
      all: hits(null),
      alone: {
        mass: hits('mass'),
        balance: hits('balance'),
        speed: hits('speed'),
        bend: hits('bend'),
        vane: hits('vane'),
        head: hits('head'),
        nockTravel: hits('nockTravel'),
      },
    };
  });
}
