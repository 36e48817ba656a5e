import { dragAt } from '../arrow/drag/drag-at.ts';
import { densityAltitude } from '../atmosphere/standard.ts';
import type { Wind } from '../atmosphere/wind.ts';
import { type Calibration, estimateOf, type Residual } from '../calibration/fit.ts';
import type { DisplayUnits } from '../quantities/display-units.ts';
import { formatQuantity } from '../quantities/format.ts';
import { bowLengthWords } from './bow-length.ts';
import type { Block } from './report.ts';
import type { Place, Session } from './session.ts';
import { warnings } from './warnings.ts';

/**
 * The head of a report: which bow and arrow, in what air, and what the numbers rest on; then what makes its numbers doubtful.
 */
export const headBlocks = (session: Session): readonly Block[] => [
  {
    kind: 'head',
    lines: [
      session.title,
      `Arrow  ${arrowLine(session)}`,
      `Air    ${airLine(session)}`,
      `Based on ${basisLine(session)}`,
    ],
    short: shortLine(session),
  },
  ...warnings(session).map((text): Block => ({ kind: 'warning', text })),
];

/** The head on one line. */
function shortLine({ title, assembly, calibration, uncalibrated, units, place }: Session): string {
  const { air } = calibration.rig.conditions;
  return [
    `${title}: ${formatQuantity(assembly.arrow.flying.mass, units.mass, 0)} at`,
    `${formatQuantity(calibration.rig.launchSpeed, units.speed, 0)},`,
    ...(place === null || place.name === null ? [] : [`${place.name},`]),
    `${formatQuantity(air.temperature, units.temperature, 0)}, density altitude`,
    `${formatQuantity(densityAltitude(air.density), units.height, 0)}`,
    ...(uncalibrated ? ['(shot marks left out)'] : []),
  ].join(' ');
}

export function arrowLine(session: Session): string {
  const { assembly, calibration, units } = session;
  const { arrow, conditions } = { arrow: assembly.arrow, conditions: calibration.rig.conditions };
  const { flying } = arrow;
  const speed = calibration.rig.launchSpeed;
  const drag = dragAt(conditions.arrow, conditions.air, speed);
  const from = {
    parts: 'built up from the parts',
    given: 'as given',
    assumed: 'of a plain hunting arrow, assumed',
  }[arrow.dragFrom];
  const { dragScale } = conditions.arrow;
  const calibrated = dragScale === 1 ? '' : `, × ${dragScale.toFixed(3)} calibrated`;
  return [
    formatQuantity(flying.mass, units.mass, 1),
    `${bowLengthWords(flying.diameter, units, 3)} shaft`,
    `${formatQuantity(speed, units.speed, 1)} at release${unmeasuredWords(session)}`,
    `drag coefficient ${drag.toFixed(2)} (${from}${calibrated})`,
  ].join(', ');
}

/** The air that the numbers hold for, with the name of the place. */
/** That nobody measured the speed, and what it rests on; nothing where somebody did. */
function unmeasuredWords({ setup, calibration, calibrated, units }: Session): string {
  if (setup.launch.speed !== 'unknown') return '';
  const sd = formatQuantity(estimateOf(calibration, 'launch_speed').sd, units.speed, 1);
  const rated = setup.bow.rating === undefined ? 'a guess' : "the bow's rating";
  return ` (not measured: from ${rated}${calibrated ? ' and what was shot' : ''}, ± ${sd})`;
}

export function airLine({ setup, calibration, units, place }: Session): string {
  const { air, wind, slope } = calibration.rig.conditions;
  const parts = [
    formatQuantity(air.temperature, units.temperature, 0),
    formatQuantity(air.pressure, units.pressure, units.pressure === 'inHg' ? 2 : 0),
    `humidity ${formatQuantity(air.humidity, '%', 0)}`,
    formatQuantity(air.density, units.density, units.density === 'kg/m3' ? 3 : 4),
    `density altitude ${formatQuantity(densityAltitude(air.density), units.height, 0)}`,
  ];
  if (setup.air === undefined && place === null)
    parts.push('the standard atmosphere at sea level, because the file gives no air');
  parts.push(...windParts(wind, units));
  if (slope !== 0)
    parts.push(`line of sight ${formatQuantity(slope, 'deg', 1)} ${slope > 0 ? 'uphill' : 'downhill'}`);
  return `${placeWords(place)}${parts.join(', ')}`;
}

/** Before the air of another place. */
const placeWords = (place: Place | null): string => {
  if (place === null) return '';
  return place.name === null ? 'as asked for: ' : `at ${place.name}: `;
};

function basisLine(session: Session): string {
  const { build } = session;
  if (build === null) return shotBasis(session);
  const speed = build.speedFrom === 'chronographed' ? 'its own chronograph' : "the bow's energy";
  return `${shotBasis(session)}, with the file's own arrow; the speed of this one is from ${speed}`;
}

function shotBasis({ calibrated, calibration, setup }: Session): string {
  if (calibrated) {
    return `${shotWords(calibration)} (calibrated; they can be left aside)`;
  }
  const shot = [setup.marks, setup.speeds, setup.drops, setup.days].some(
    (list) => list !== undefined && list.length > 0,
  );
  return shot
    ? 'the bow and arrow as measured; the shot marks are left out'
    : 'the bow and arrow as measured; no shot marks yet';
}

/** What was shot, one and several of it. */
const SHOT: Readonly<Record<Residual['measurement']['kind'], readonly [one: string, several: string]>> = {
  mark: ['shot mark', 'shot marks'],
  pencil: ['pencil mark', 'pencil marks'],
  speed: ['speed down range', 'speeds down range'],
  drop: ['drop', 'drops'],
};

/** `4 shot marks, 2 drops` */
function shotWords({ residuals }: Calibration): string {
  const count = (kind: string): number =>
    residuals.filter(({ measurement }) => measurement.kind === kind).length;
  return Object.entries(SHOT)
    .map(([kind, words]) => ({ words, count: count(kind) }))
    .filter((shot) => shot.count > 0)
    .map(({ words: [one, several], count: shots }) => `${shots} ${shots === 1 ? one : several}`)
    .join(', ');
}

/** When a document was made, and what its numbers rest on. */
export function dateLine(day: string, { calibrated, calibration }: Session): string {
  const basis = calibrated ? `fitted to ${shotWords(calibration)}` : 'not fitted to any shot mark';
  return `${day}, ${basis}`;
}

/** Less than this is no wind, m/s. */
const CALM = 0.05;

const windParts = ({ across, tail, up }: Wind, { windSpeed }: DisplayUnits): readonly string[] => {
  const blows = (speed: number, from: string): string[] =>
    Math.abs(speed) < CALM ? [] : [`wind ${formatQuantity(Math.abs(speed), windSpeed, 1)} from ${from}`];
  return [
    ...blows(across, across > 0 ? 'the left' : 'the right'),
    ...blows(tail, tail > 0 ? 'behind' : 'ahead'),
    ...(Math.abs(up) < CALM
      ? []
      : [`air ${up > 0 ? 'rising' : 'sinking'} at ${formatQuantity(Math.abs(up), windSpeed, 1)}`]),
  ];
};
