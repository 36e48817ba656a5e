import { buildThere } from '../../advice/builds/build-there.ts';
import { asAtHome, calibrationElsewhere, carriedTo, type There } from '../../calibration/elsewhere.ts';
import type { Calibration } from '../../calibration/fit.ts';
import { at } from '../../numerics/at.ts';
import { bowWithBuilds } from '../../setup/assemble/assemble-bow.ts';
import { mergeBuild } from '../../setup/assemble/merge-build.ts';
import type { Place, Session } from '../session.ts';
import { sameName, unknownName } from './place-asked.ts';

/** What a session is to answer for: another place, another arrow, or both; null for the file's own. */
export interface Standing {
  readonly place: Place | null;
  /** The name of an entry of the file's `builds`. */
  readonly build: string | null;
}

/**
 * The session for another arrow and at another place: the fit, which used the file's own arrow and the air of the marks,
 * stays, and every answer is for the arrow and the air asked for. The sight stays as it was zeroed at home with the file's own
 * arrow.
 *
 * @throws QuestionError for a build that the file does not have; NumericalError when an arrow falls short of the zero range
 */
export function standingAt(session: Session, { place, build }: Standing): Session {
  if (build !== null) return withBuild(session, build, place);
  if (place === null) return session;
  return { ...session, place, calibration: calibrationAt(session, asAtHome(session.calibration), place) };
}

const calibrationAt = ({ calibration }: Session, there: There, place: Place | null): Calibration =>
  calibrationElsewhere(
    calibration,
    place === null ? there : carriedTo({ conditions: place.conditions, ...place.warmth }, there),
  );

function withBuild(session: Session, name: string, place: Place | null): Session {
  const { setup, assembly, title } = session;
  const { builds = [] } = setup;
  const index = builds.findIndex((entry) => sameName(entry.name, name));
  if (index < 0)
    throw unknownName(
      'build',
      name,
      builds.map((entry) => entry.name),
      {
        wrong: 'the file lists no builds',
        write: 'List them under "builds:", each with a name and what differs from the arrow.',
      },
    );
  const entry = at(builds, index);
  const { build, there } = buildThere(bowWithBuilds(session), index);
  return {
    ...session,
    place,
    build: { name: entry.name, speedFrom: build.speedFrom },
    title: `${title}, ${entry.name}`,
    setup: mergeBuild(setup, entry),
    assembly: { ...assembly, arrow: build.arrow, rig: { ...there.rig, launchSpeed: build.rig.launchSpeed } },
    calibration: calibrationAt(session, there, place),
  };
}
