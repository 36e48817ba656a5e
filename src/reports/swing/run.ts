import { arrowEnds } from '../../advice/launch/arrow-ends.ts';
import { LEAST_MARGIN, type SwingAdvice, swingAdvice } from '../../advice/launch/swing.ts';
import type { AnswerOptions } from '../../cli/commands/shared-options.ts';
import type { Io } from '../../cli/io.ts';
import { present } from '../../cli/output/present.ts';
import { openNamedFile } from '../../cli/world/named-file.ts';
import { rangeColumn } from '../../documents/table/range-digits.ts';
import type { Table } from '../../documents/table/table.ts';
import { YARD } from '../../quantities/exact.ts';
import { fromSi, symbolOf } from '../../quantities/format.ts';
import { type Metres, si } from '../../quantities/quantity.ts';
import { straightLaunch } from '../../sight/shot.ts';
import { optionQuantity, optionRanges } from '../asked/quantity.ts';
import { partsOf } from '../changed-build.ts';
import { flownRanges } from '../flown-ranges.ts';
import type { Session } from '../session.ts';
import { swingText } from './text.ts';

export interface SwingOptions extends AnswerOptions {
  readonly to: string;
  readonly every: string;
  readonly angle: string;
  readonly nockTravel: string;
}

export function runSwing(io: Io, path: string, options: SwingOptions): void {
  const session = openNamedFile(io, path, options);
  partsOf(session, 'swing');
  const { arrow } = session.assembly;
  const launch = straightLaunch(session.calibration.rig);
  const angle = optionQuantity('angle', options.angle, 'angle');
  const nockSpeed = optionQuantity('nockTravel', options.nockTravel, 'speed');
  const tip = launch.position[0] + arrowEnds(arrow).ahead;
  const advice = swingAdvice({
    arrow,
    conditions: session.calibration.rig.conditions,
    launch,
    angle,
    rate: si(nockSpeed / arrow.flying.balance),
    ranges: flownRanges(optionRanges(options), launch, session.units),
    papers: papers(session).filter((range) => range > tip),
  });
  present(io, options, {
    text: () => swingText({ session, advice, angle, nockSpeed }, io),
    json: () => json(session, advice, { angle, nockSpeed }),
    table: () => missTable(session, advice),
  });
}

/** Where paper is hung: two to four yards or metres. */
const papers = ({ units }: Session): readonly Metres[] =>
  [2, 3, 4].map((count) => si(count * (units.range === 'yd' ? YARD : 1)));

const json = (
  session: Session,
  { staticMargin, marginShare, tooSmall, swing, starts }: SwingAdvice,
  { angle, nockSpeed }: { readonly angle: number; readonly nockSpeed: number },
): object => ({
  title: session.title,
  calibrated: session.calibrated,
  static_margin_m: staticMargin,
  margin_share: marginShare,
  least_margin_share: LEAST_MARGIN,
  margin_too_small: tooSmall,
  swing_wavelength_m: swing?.wavelength ?? null,
  swing_damping_m: swing?.dampingLength ?? null,
  start_angle_rad: angle,
  nock_travel_mps: nockSpeed,
  starts: starts.map(({ name, largest, recovery, energyLost, speedLost, misses, holes }) => ({
    name,
    largest_rad: largest,
    recovery_m: recovery,
    energy_lost_J: energyLost,
    speed_lost_mps: speedLost,
    misses: misses.map(({ range, right, high }) => ({ range_m: range, right_m: right, high_m: high })),
    paper: holes.map(({ range, nockRight, nockHigh, length, clockwise }) => ({
      range_m: range,
      nock_right_m: nockRight,
      nock_high_m: nockHigh,
      tear_m: length,
      clockwise_rad: clockwise,
    })),
  })),
});

/** Every start and range in a row. */
function missTable({ units }: Session, { starts }: SwingAdvice): Table {
  const length = { unit: symbolOf(units.smallLength), digits: units.smallLength === 'in' ? 3 : 1 };
  return {
    columns: [
      { name: 'start', unit: '' },
      rangeColumn(
        starts.flatMap(({ misses }) => misses.map(({ range }) => range)),
        units,
      ),
      { name: 'right', ...length },
      { name: 'high', ...length },
    ],
    rows: starts.flatMap(({ name, misses }) =>
      misses.map(({ range, right, high }) => [
        name,
        fromSi(range, units.range),
        fromSi(right, units.smallLength),
        fromSi(high, units.smallLength),
      ]),
    ),
  };
}
