import { buildCurves } from '../../advice/builds/comparison.ts';
import type { Drawing, PaperName } from '../../documents/page/drawing.ts';
import { cautionOnPaper } from '../cautions.ts';
import { airLine, arrowLine } from '../head.ts';
import { warnings } from '../warnings.ts';
import { bowLines } from './bow-words.ts';
import { buildChanges } from './build-changes.ts';
import { compareCautions } from './cautions.ts';
import { choiceWords } from './choice.ts';
import type { CompareFindings } from './findings.ts';
import { layOutComparison } from './sheet-layout.ts';
import { surroundingsLine } from './words.ts';

/** The page to take to the shop. */
export function compareSheet(
  compared: CompareFindings,
  { page, day }: { readonly page: PaperName; readonly day: string },
): Drawing {
  const { session, comparison } = compared;
  return layOutComparison(
    {
      comparison,
      curves: buildCurves(comparison, smooth(comparison.questions.ranges)),
      units: session.units,
      title: `${session.title}: which build to buy`,
      subtitle: [`${day}. ${airLine(session)}`, `now: ${arrowLine(session)}`, ...changesOf(compared)],
      choice: choiceWords(compared),
      notes: [surroundingsLine(compared), ...bowLines(session, comparison.base).split('\n')].filter(
        (line) => line !== '',
      ),
      cautions: [...compared.sessions.flatMap(warnings), ...compareCautions(compared).map(cautionOnPaper)],
    },
    page,
  );
}

/** What each listed build changes; builds of other files are described there. */
const changesOf = ({ sessions }: CompareFindings): readonly string[] =>
  sessions.flatMap(({ setup, units }) =>
    (setup.builds ?? []).map((build) => `${build.name}: ${buildChanges(build, units)}`),
  );

/** Places for a curve from the nearest to the farthest range. */
function smooth(ranges: readonly number[]): readonly number[] {
  const [from = 0, to = from] = [ranges[0], ranges.at(-1)];
  return Array.from({ length: CURVE_POINTS }, (_, i) => from + ((to - from) * i) / (CURVE_POINTS - 1));
}
const CURVE_POINTS = 40;
