import type { Bow, Candidate } from '../../advice/builds/candidate.ts';
import { otherShots, powerStroke, virtualMassPrior } from '../../setup/assemble/assemble-launch.ts';
import { assembleBuild } from '../../setup/assemble/assemble-variant.ts';
import type { OpenSetup } from '../../setup/open.ts';

/** The bow of a session, with the arrows it might shoot. */
export function bowOf(session: OpenSetup, candidates: readonly Candidate[]): Bow {
  const { setup, assembly, calibration, title } = session;
  return {
    name: title,
    arrow: assembly.arrow,
    calibration,
    candidates,
    otherShots: otherShots(setup.bow),
    virtualMass: virtualMassPrior(setup.bow),
    // Files with the same bow, word for word, are about one bow.
    identity: JSON.stringify(setup.bow),
    rated: setup.launch.speed === 'rated',
    powerStroke: powerStroke(setup.bow),
    peakDraw: setup.bow.peak_draw_weight ?? null,
  };
}

/** The bow with the builds its file lists. */
export const bowWithBuilds = (session: OpenSetup): Bow =>
  bowOf(
    session,
    (session.setup.builds ?? []).map((build) => assembleBuild(session.setup, session.assembly, build)),
  );
