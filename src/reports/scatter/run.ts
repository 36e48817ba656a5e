import { type ScatterJob, type ScatterQuestion, scatterQuestion } from '../../advice/scatter/scatter.ts';
import { CAUSES, type Cause, type Variation } from '../../advice/scatter/scatter-causes.ts';
import { type Hits, scatterByRange } from '../../advice/scatter/scatter-groups.ts';
import { otherVanes, withUsualBlades } from '../../arrow/parts/other-parts.ts';
import type { ArrowParts } from '../../arrow/parts/parts.ts';
import type { AnswerOptions } from '../../cli/commands/shared-options.ts';
import type { Io } from '../../cli/io.ts';
import { present } from '../../cli/output/present.ts';
import { progressBar } from '../../cli/output/progress.ts';
import { openNamedFile } from '../../cli/world/named-file.ts';
import type { Metres } from '../../quantities/quantity.ts';
import { virtualMassPrior } from '../../setup/assemble/assemble-launch.ts';
import { straightLaunch } from '../../sight/shot.ts';
import { optionRanges } from '../asked/quantity.ts';
import { QuestionError } from '../asked/question-error.ts';
import { changedBuild, conditionsWith, partsOf } from '../changed-build.ts';
import type { Session } from '../session.ts';
import { ownThread } from '../tasks.ts';
import { scatterTable, scatterText, type VaneScatter } from './text.ts';
import { variationFrom } from './variation.ts';

export interface ScatterOptions extends AnswerOptions {
  readonly from: string;
  readonly to: string;
  readonly every: string;
  readonly group: number;
  readonly arrows: number;
  readonly seed: number;
  readonly mass: string;
  readonly balance: string;
  readonly speed: string;
  readonly bend: string;
  readonly vane: string;
  readonly head: string;
  readonly nockTravel: string;
  readonly broadhead?: boolean;
}

export async function runScatter(io: Io, path: string, options: ScatterOptions): Promise<void> {
  const session = openNamedFile(io, path, options);
  const own = partsOf(session, 'scatter');
  const parts = options.broadhead === true ? withUsualBlades(own) : own;
  const { vanes } = parts;
  if (vanes === undefined)
    throw new QuestionError('scatter: the arrow has no vanes', 'Write arrow.parts.vanes.');
  if (options.arrows < options.group)
    throw new QuestionError(
      `{arrows}: ${options.arrows} are fewer than one group of ${options.group}`,
      `Write {arrows} ${100 * options.group}.`,
    );
  const ranges = optionRanges(options);
  const questions = [vanes, otherVanes(vanes)].map((fletching) =>
    questionOf(session, { ...parts, vanes: fletching }, ranges, options),
  );
  const bladed = parts.point.shape === 'fixed_blade';
  const hits = await shoot(io, questions, options.arrows);
  const found = questions.flatMap((question, i): readonly VaneScatter[] => {
    const fletching = question.arrow.parts?.vanes;
    const of = hits[i];
    return fletching === undefined || of === undefined
      ? []
      : [{ vanes: fletching, bladed, ranges: scatterByRange(of, ranges, options.group) }];
  });
  present(io, options, {
    text: () => scatterText({ session, found, variation: variationOf(session, options), ...options }, io),
    json: () => json(session, found, options),
    table: () => scatterTable(session, found),
  });
}

function questionOf(
  session: Session,
  parts: ArrowParts,
  ranges: readonly Metres[],
  options: ScatterOptions,
): ScatterQuestion {
  const own = session.assembly.arrow;
  const same = parts.vanes === own.parts?.vanes && parts.point === own.parts?.point;
  const arrow = same ? own : changedBuild(session, parts);
  return scatterQuestion(arrow, conditionsWith(session, arrow), {
    launch: straightLaunch(session.calibration.rig),
    virtualMass: virtualMassPrior(session.setup.bow).value,
    variation: variationOf(session, options),
    seed: options.seed,
    ranges,
  });
}

const variationOf = ({ assembly }: Session, options: ScatterOptions): Variation =>
  variationFrom(options, assembly.arrow.flying.balance);

/** Arrows in one job: some 10 ms of work, so that the bar moves and a Ctrl-C is heard. */
const STRETCH = 50;

/** All causes and each alone, for every question, spread over the cores. */
async function shoot(
  io: Io,
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
  const bar = progressBar(io, 'shooting', jobs.length);
  const pool = (await io.pool?.()) ?? ownThread;
  const answers = await pool.map('scatter', jobs, bar.done).finally(bar.end);
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

/** Keys of a cause in the JSON document. */
const CAUSE_KEYS: Readonly<Record<Cause, string>> = {
  mass: 'mass',
  balance: 'balance',
  speed: 'speed',
  bend: 'bend',
  vane: 'vane',
  head: 'head',
  nockTravel: 'nock_travel',
};

const json = (session: Session, found: readonly VaneScatter[], options: ScatterOptions): object => ({
  title: session.title,
  calibrated: session.calibrated,
  broadhead: found[0]?.bladed ?? null,
  arrows: options.arrows,
  group: options.group,
  seed: options.seed,
  builds: found.map(({ vanes, ranges }) => ({
    vane_angle_rad: vanes.angle,
    turn: vanes.turn,
    rows: ranges.map((row) => ({
      range_m: row.range,
      group_m: row.group,
      lateral_sd_m: row.lateralSd,
      vertical_sd_m: row.verticalSd,
      together: row.together,
      causes: row.causes.map(({ cause, share, group, lateralSd, verticalSd }) => ({
        cause: CAUSE_KEYS[cause],
        share,
        group_m: group,
        lateral_sd_m: lateralSd,
        vertical_sd_m: verticalSd,
      })),
    })),
  })),
});
