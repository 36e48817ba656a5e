import { asDraft } from '../../documents/page/draft.ts';
import type { Drawing, PaperName } from '../../documents/page/drawing.ts';
import { layOutPocket, type PocketFace, pocketRoom } from '../../documents/page/pocket-card.ts';
import { numberText, typeset } from '../../documents/table/number-text.ts';
import { formatQuantity, fromSi, symbolOf } from '../../quantities/format.ts';
import { isDraft } from '../refuse-contradiction.ts';
import type { Session } from '../session.ts';
import type { CardFindings, CardRow } from './findings.ts';

/** Two pairs of slopes find room beside the wind: those of hills and stands, which are neither the gentlest nor the steepest. */
const SLOPES_SHOWN = 4;

/** A card for a pocket: what to set on one side, wind and slopes on the other. */
export function pocketSheet(
  session: Session,
  found: CardFindings,
  { page, day }: { readonly page: PaperName; readonly day: string },
): Drawing {
  const drawing = layOutPocket(
    fitted(markFace(session, found, day), found.rows.length),
    fitted(windFace(session, found, day), found.rows.length),
    page,
  );
  return isDraft(session) ? asDraft(drawing) : drawing;
}

/** The side with its first row and every second, fourth ... of the others, as many as it holds. */
function fitted(face: PocketFace, count: number): PocketFace {
  const room = pocketRoom(face);
  let step = 1;
  while (Math.ceil(count / step) > room) step += 1;
  return { ...face, rows: face.rows.filter((_, i) => i % step === 0) };
}

const words = (value: number, digits: number): string => typeset(numberText(value, digits));

const footOf = ({ calibration, assembly, units }: Session, day: string, text: string): string =>
  [
    text,
    formatQuantity(assembly.arrow.flying.mass, units.mass, 0),
    formatQuantity(calibration.rig.launchSpeed, units.speed, 0),
    day,
  ].join(', ');

function markFace(session: Session, { rows, isScaled }: CardFindings, day: string): PocketFace {
  const { units, title } = session;
  const shown = ({ mark }: CardRow): string => {
    const { reading, travel } = mark;
    return isScaled && reading !== null ? words(reading, 1) : words(fromSi(travel, 'mm'), 1);
  };
  return {
    title,
    heads: [symbolOf(units.range), isScaled ? 'set' : 'travel mm'],
    rows: rows.map((row) => [words(fromSi(row.mark.range, units.range), 0), shown(row)]),
    foot: footOf(session, day, 'Have a backstop behind every shot'),
  };
}

/** Wind from the side, and what to take off the range uphill and downhill. */
function windFace(session: Session, { rows, slopes, crosswind }: CardFindings, day: string): PocketFace {
  const { units, title } = session;
  const all = [...new Set(slopes.map(({ slope }) => slope))].toSorted(
    (a, b) => Math.abs(a) - Math.abs(b) || b - a,
  );
  const angles = all.length < 6 ? all.slice(-SLOPES_SHOWN) : all.slice(2, 2 + SLOPES_SHOWN);
  const wind = formatQuantity(crosswind, units.windSpeed, 0);
  return {
    title,
    heads: [
      symbolOf(units.range),
      `wind ${symbolOf(units.smallLength)}`,
      ...angles.map((angle) => `${angle > 0 ? 'up' : 'down'} ${Math.abs(fromSi(angle, 'deg')).toFixed(0)}°`),
    ],
    rows: rows.map(({ mark: { range }, windDrift }) => [
      words(fromSi(range, units.range), 0),
      words(Math.abs(fromSi(windDrift, units.smallLength)), units.smallLength === 'in' ? 1 : 0),
      ...angles.map((angle) => {
        const cut = slopes.find((each) => each.slope === angle && Math.abs(each.range - range) < 1e-6);
        return cut === undefined || cut.markRange === null
          ? '-'
          : words(fromSi(range - cut.markRange, units.range), 1);
      }),
    ]),
    foot: footOf(session, day, `Wind ${wind} from the side; up and down: take this off the range`),
  };
}
