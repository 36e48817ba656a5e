import type { TunedBuild } from '../../advice/builds/tuned-build.ts';
import type { DisplayUnits } from '../../quantities/display-units.ts';
import { bowLengthWords } from '../bow-length.ts';
import { carryCaution, caution, grainsPerPound, isLight, lightArrow } from '../cautions.ts';
import type { Caution } from '../report.ts';
import { buildsOf, type CompareFindings } from './findings.ts';

/** What a number of a comparison can do to somebody. */
export function compareCautions({ session, comparison }: CompareFindings): readonly Caution[] {
  const builds = buildsOf(comparison);
  const light = builds.flatMap(({ build, facts }) => {
    const perDraw = facts.massPerDraw?.value;
    return perDraw !== undefined && isLight(perDraw)
      ? [`${build.name} (${grainsPerPound(perDraw).toFixed(1)} gr/lb)`]
      : [];
  });
  const taller = builds
    .slice(1)
    .filter(
      ({ build }) => build.arrow.flying.fletchRadius > comparison.base.build.arrow.flying.fletchRadius + SAME,
    );
  return [
    ...(light.length === 0 ? [] : [caution(`${light.join(', ')}: ${lightArrow()}`)]),
    ...(session.setup.bow.peak_draw_weight === undefined
      ? [
          caution(
            'Write bow.peak_draw_weight to have every build checked against 5 gr of arrow per pound of draw weight.',
            { label: '' },
          ),
        ]
      : []),
    ...(taller.length === 0
      ? []
      : [
          caution(
            `${taller.map(({ build }) => vaneWords(build, session.units)).join(', ')}, ` +
              'more than now: check rest, cables and riser at a slow draw, with powder on the vanes.',
            { label: 'Vane clearance' },
          ),
        ]),
    caution(
      'For game, your local hunting code sets the least draw weight, energy and arrow, and you judge the ' +
        'range; this table decides neither.',
      { label: '', short: 'For game, your local hunting code and your own groups decide, not this table.' },
    ),
    carryCaution(session),
  ];
}

const vaneWords = ({ name, arrow }: TunedBuild, { bowLength }: DisplayUnits): string =>
  `${name} stands ${bowLengthWords(arrow.flying.fletchRadius, { bowLength }, 2)} off the axis`;

/** Radii nearer than this are one build's rounding, m. */
const SAME = 1e-5;
