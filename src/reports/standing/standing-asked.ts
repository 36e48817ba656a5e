import type { Rig } from '../../sight/rig.ts';
import { BUILD_OPTIONS, PLACE_OPTIONS } from '../asked/place-options.ts';
import { SIGHT_OPTIONS } from '../asked/sight-options.ts';
import type { Session, Sessions } from '../session.ts';
import { eachAsked, isListed } from './each-asked.ts';
import { type PlaceWritten, placeAsked } from './place-asked.ts';
import { type SightWritten, withSightAsked } from './sight-asked.ts';
import { standingAt } from './standing-at.ts';

/**
 * The sessions as the options of a question ask for them; unchanged for a question without such options. A question that takes
 * several places and builds gets its one setup in each of them: every build at every place.
 */
export function standingAsked([first, ...others]: Sessions, asked: object): Sessions {
  if (!isPlaced(asked)) return [first, ...others];
  if (!isListed(asked)) return [standing(first, asked), ...others.map((session) => standing(session, asked))];
  const [once, ...more] = eachAsked(first.setup, asked);
  return once === undefined
    ? [first, ...others]
    : [standing(first, once), ...more.map((each) => standing(first, each))];
}

/** What the document of an answer that predicts says of where and for which arrow it holds, SI; nothing for the others. */
export function standingData({ place, build, calibration }: Session, asked: object): object {
  if (!isPlaced(asked)) return {};
  const { temperature, pressure, humidity, density } = calibration.rig.conditions.air;
  return {
    place: {
      name: place === null ? null : place.name,
      temperature_K: temperature,
      pressure_Pa: pressure,
      humidity,
      density_kgpm3: density,
    },
    ...(isMoved(asked) ? { sight: sightData(calibration.rig) } : {}),
    ...(isBuilt(asked) ? { build: build === null ? null : build.name } : {}),
  };
}

const sightData = ({ geometry }: Rig): object => ({
  peep_to_pin_m: geometry.peepToPin,
  peep_height_m: geometry.peepHeight,
});

/** Whether a question has the options of a place. */
const isPlaced = (asked: object): asked is PlaceWritten =>
  Object.keys(PLACE_OPTIONS).every((name) => Object.hasOwn(asked, name));

/** Whether a question can be asked of one of the builds. */
const isBuilt = (asked: object): asked is { readonly build: string | null } =>
  Object.keys(BUILD_OPTIONS).every((name) => Object.hasOwn(asked, name));

const isMoved = (asked: object): asked is SightWritten =>
  Object.keys(SIGHT_OPTIONS).every((name) => Object.hasOwn(asked, name));

/** The sight first: it is zeroed again at home, and used at the place. */
const standing = (session: Session, asked: PlaceWritten): Session =>
  standingAt(isMoved(asked) ? withSightAsked(session, asked) : session, {
    place: placeAsked(session, asked),
    build: isBuilt(asked) ? asked.build : null,
  });
