import { LEAST_MARGIN } from '../../advice/launch/swing.ts';
import type { TotalDifference } from '../../arrow/arrow.ts';
import { massPerDraw } from '../../bow/mass-per-draw.ts';
import type { DisplayUnits } from '../../quantities/display-units.ts';
import { formatQuantity } from '../../quantities/format.ts';
import { tapeForm } from '../../setup/assemble/tape-form.ts';
import { bowLengthWords } from '../bow-length.ts';
import { grainsPerPound } from '../cautions.ts';
import type { Session } from '../session.ts';
import type { CheckFindings } from './findings.ts';
import { isBeyondGlue } from './part-words.ts';

/** Names of facts stand in a column this wide. */
const NAME_WIDTH = 18;

/** The arrow in flight, a fact a line, and where a measured total differs from its parts. */
export const arrowWords = (session: Session, found: CheckFindings): string =>
  factLines(session, [...massFacts(session), ...bowFacts(session), ...flightFacts(session, found)]);

/** The same with what only a computation needs. */
export const wholeArrowWords = (session: Session, found: CheckFindings): string =>
  factLines(session, [
    ...massFacts(session),
    ...bowFacts(session),
    ...inertiaFacts(session),
    ...flightFacts(session, found),
  ]);

const factLines = (session: Session, facts: readonly Fact[]): string =>
  [
    ...facts.map(([name, words]) => name.padEnd(NAME_WIDTH) + words),
    ...session.assembly.arrow.differences
      .filter((difference) => !isBeyondGlue(difference))
      .map((difference) => differenceWords(difference, session.units)),
  ].join('\n');

type Fact = readonly [name: string, words: string];

function massFacts({ assembly, units }: Session): readonly Fact[] {
  const { flying, frontOfCentre } = assembly.arrow;
  return [
    ['mass', formatQuantity(flying.mass, units.mass, 1)],
    ['balance from nock', bowLengthWords(flying.balance, units, 2)],
    ...factOf('front of centre', frontOfCentre, (share) => formatQuantity(share, '%', 1)),
  ];
}

function flightFacts(
  { assembly, units }: Session,
  { spinUp, swing, marginSd }: CheckFindings,
): readonly Fact[] {
  const { flying, staticMargin } = assembly.arrow;
  return [
    ...factOf('static margin', staticMargin, (margin) => marginWords(margin, marginSd, units)),
    ...factOf('spin', flying.attitude, ({ spinPerMetre }) => spinWords(spinPerMetre, spinUp, units)),
    ...factOf(
      'swing',
      swing,
      ({ wavelength, dampingLength }) =>
        `${formatQuantity(wavelength, units.range, 1)} a wave, dies to 37 % within ` +
        `${formatQuantity(dampingLength, units.range, 1)}`,
    ),
  ];
}

function inertiaFacts({ assembly }: Session): readonly Fact[] {
  return factOf(
    'inertia',
    assembly.arrow.flying.attitude,
    ({ axialInertia, transverseInertia }) =>
      `${axialInertia.toExponential(3)} kg m² about the shaft, ${transverseInertia.toExponential(3)} kg m² across it`,
  );
}

/** What the bow and the arrow are to one another. */
function bowFacts({ setup, assembly, calibration, units }: Session): readonly Fact[] {
  const { mass } = assembly.arrow.flying;
  const weight = setup.bow.peak_draw_weight;
  return [
    ...(weight === undefined
      ? []
      : ([['gr/lb', grainsPerPound(massPerDraw(mass, weight)).toFixed(1)]] as const)),
    ['energy', formatQuantity((mass * calibration.rig.launchSpeed ** 2) / 2, units.energy, 1)],
  ];
}

/** A fact of something known; none of what is not. */
const factOf = <Known>(
  name: string,
  known: Known | null,
  words: (known: Known) => string,
): readonly Fact[] => (known === null ? [] : [[name, words(known)]]);

/** Of an arrow whose margin is too small to trust, with its error. */
export function smallMarginWords(found: CheckFindings, { assembly, units }: Session): string {
  const { staticMargin, length } = assembly.arrow;
  if (staticMargin === null || length === null) return '';
  const share = `${((100 * staticMargin) / length).toFixed(0)} % of the arrow's length`;
  return (
    `the static margin is ${marginSize(staticMargin, found.marginSd, units)}, ${share}; below ` +
    `${100 * LEAST_MARGIN} %, anything crooked on the arrow steers it. Use smaller blades, larger ` +
    'vanes, or more weight up front.'
  );
}

const marginSize = (margin: number, sd: number | null, { bowLength }: DisplayUnits): string =>
  bowLengthWords(margin, { bowLength }, 1) +
  (sd === null ? '' : ` ± ${bowLengthWords(sd, { bowLength }, 1)}`);

const marginWords = (margin: number, sd: number | null, units: DisplayUnits): string =>
  `${marginSize(Math.abs(margin), sd, units)}: centre of pressure ${margin > 0 ? 'behind' : 'ahead of'} the balance point`;

const spinWords = (
  spin: number,
  growth: CheckFindings['spinUp'],
  { spinPerLength, range }: DisplayUnits,
): string =>
  spin === 0 || growth === null
    ? 'none: the vanes do not spin it'
    : `${formatQuantity(spin, spinPerLength, 3)}, ${spin > 0 ? 'clockwise' : 'counterclockwise'} from behind; ` +
      `63 % of it after ${formatQuantity(growth, range, 1)}`;

function differenceWords({ what, measured, fromParts }: TotalDifference, units: DisplayUnits): string {
  const words = (value: number): string =>
    what === 'mass' ? formatQuantity(value, units.mass, 1) : bowLengthWords(value, units, 3);
  return `${what}: measured ${words(measured)}, parts add up to ${words(fromParts)}; the measurement is used`;
}

/** What stands in for what the file does not say; empty when it says everything. */
export function assumedWords({ assembly }: Session, { assumed }: CheckFindings): string {
  const lines = [
    ...assumed.map(({ key, text, why }) => `  ${key}: ${text} (${why})`),
    ...assembly.arrow.assumptions.map(
      (assumption) => `  ${assumption}: the file has neither parts nor a measured value`,
    ),
  ];
  return lines.length === 0 ? '' : ['Assumed, because the file does not say:', ...lines].join('\n');
}

/** What was not typed as the program writes it, with what it was taken for; empty for most. */
export const readAsWords = ({ setup: { readAs = [] } }: Session): string =>
  readAs.length === 0
    ? ''
    : ['Read as:', ...readAs.map(({ path, found, readAs: meant }) => `  ${path}: ${found} is ${meant}`)].join(
        '\n',
      );

/** How a tape will be cut, and which way it runs: a strip that runs the wrong way is only seen on the sight. */
export function tapeWords({ setup }: Session): string {
  const { width, length, ticks, farAt, numbers, travelRatio } = tapeForm(setup);
  const long = length === null ? '' : ` on a place ${formatQuantity(length, 'mm', 1)} long`;
  const form =
    `Tape: ${formatQuantity(width, 'mm', 1)} wide${long}, ticks on the ${ticks}, long ranges at the ${farAt}, ` +
    `numbers ${numbers}, ${travelRatio} times the travel of the pin`;
  const stated = setup.sight.tape;
  const unsaid = [
    ...(stated?.ticks === undefined ? [`ticks by the hand that draws (${setup.bow.hand ?? 'right'})`] : []),
    ...(stated?.far_at === undefined
      ? [`long ranges by which way the scale increases (${setup.sight.scale?.increases ?? 'down'})`]
      : []),
  ];
  return unsaid.length === 0
    ? `${form}.`
    : `${form}. The file does not say: ${unsaid.join(', ')}; sight.tape.ticks and far_at change them.`;
}

/** What the file says to no effect; empty for most. */
export const unusedWords = ({ unused }: CheckFindings): string =>
  unused.length === 0 ? '' : ['In the file but not used:', ...unused.map((key) => `  ${key}`)].join('\n');
