import { type NockBand, type NockFit, nockFit } from '../../../advice/tuning/nock-fit.ts';
import type { DisplayUnits } from '../../../quantities/display-units.ts';
import { formatQuantity } from '../../../quantities/format.ts';
import { type Evening, type Logged, NO_MORE, needed, type StepAnswer } from '../step-answer.ts';

/** What the latest readings of the serving say. */
export function nockAnswer({ session }: Evening, { entry }: Logged): StepAnswer {
  const found = nockFit({
    serving: needed(entry.serving, 'serving'),
    fitsAt: entry.fits_at ?? null,
    arrowMass: session.assembly.arrow.flying.mass,
    held: entry.held ?? null,
    dropped: entry.dropped ?? null,
  });
  return {
    ...NO_MORE,
    verdict: found.band,
    done: found.done,
    line: line(found, session.units),
    paragraphs: releaseWords(found),
    notes: [
      'Bands of the mean diameter for a nock that fits at 0.109 in: 0.108 to 0.110 in good, 0.112 in high, 0.115 in ' +
        'and over too ' +
        'tight (common practice); the others are ours. Another nock shifts them by what is known to fit it.',
      'A level string must hold the hanging arrow, and a light tap must drop it (common practice).',
    ],
    data: {
      serving_mean_m: found.mean,
      serving_se_m: found.se,
      band: found.band,
      low_band: found.lowBand,
      high_band: found.highBand,
      unsure: found.unsure,
      thread_change_m: found.threadChange,
      release:
        found.release === null ? null : { held_N: found.release.held, dropped_N: found.release.dropped },
    },
  };
}

/** Diameters are told apart by ten-thousandths of an inch, whatever the units of the rest. */
const diameter = (length: number, { smallLength }: DisplayUnits, inches = 4): string =>
  formatQuantity(length, smallLength, smallLength === 'in' ? inches : inches - 1);

const WORDS: Readonly<Record<NockBand, string>> = {
  'too loose': 'Too loose',
  loose: 'Loose',
  good: 'Good',
  snug: 'Snug',
  high: 'High',
  'too tight': 'Too tight',
};

const MEANS: Readonly<Record<NockBand, string>> = {
  'too loose': 'the nock may slip off at full draw.',
  loose: 'it may slip off sooner than it should.',
  good: 'within 0.108 to 0.110 in.',
  snug: 'the upper end of what fits.',
  high: 'above what fits well.',
  'too tight': 'it stresses the nock.',
};

function line(found: NockFit, units: DisplayUnits): string {
  const size = `${diameter(found.mean, units)} (± ${diameter(found.se, units)})`;
  const unsure = found.unsure
    ? ` The readings leave open whether it is ${found.lowBand} or ${found.highBand}: measure at more places.`
    : '';
  return `${WORDS[found.band]}: ${size}, ${MEANS[found.band]}${found.done ? '' : threadWords(found, units)}${unsure}`;
}

const threadWords = ({ threadChange }: NockFit, units: DisplayUnits): string =>
  ` Serve with a thread ${diameter(Math.abs(threadChange), units, 3)} ${threadChange < 0 ? 'thinner' : 'thicker'}, ` +
  'then measure again: flattening and tension are worth a thousandth of an inch.';

function releaseWords({ release }: NockFit): readonly string[] {
  if (release === null) return [];
  const between = [release.held, release.dropped].map((force) =>
    force === null ? null : formatQuantity(force, 'N', 2),
  );
  const [held, dropped] = between;
  const forces = [
    held === null ? null : `held ${held}`,
    dropped === null ? null : `let go at ${dropped}`,
  ].filter((each) => each !== null);
  return [
    `The nock ${forces.join(' and ')}. There is no published band for that: compare your own strings with it.`,
  ];
}
