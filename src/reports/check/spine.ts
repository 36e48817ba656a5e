import { loadUnderPush, type SpineVerdict, spineVerdict } from '../../advice/builds/spine-verdict.ts';
import { si } from '../../quantities/quantity.ts';
import { powerStrokeOf, virtualMassPrior } from '../../setup/assemble/assemble-launch.ts';
import { assembleBuild } from '../../setup/assemble/assemble-variant.ts';
import type { Session } from '../session.ts';

/** The shaft under the push, and beside the build that shoots well where the file names one. */
export interface SpineFound {
  readonly load: number;
  readonly against: (SpineVerdict & { readonly name: string }) | null;
}

/** Null when the static deflection of the shaft is not known. */
export function spineOf({ setup, assembly, calibration }: Session): SpineFound | null {
  const stroke = powerStrokeOf(setup.bow);
  const own = { arrow: assembly.arrow, speed: calibration.rig.launchSpeed };
  const load = loadUnderPush(own, stroke);
  if (load === null) return null;
  const good = (setup.builds ?? []).find(({ shoots_well: well }) => well === true);
  if (good === undefined) return { load, against: null };
  const { name, arrow, speed } = assembleBuild(setup, assembly, good);
  const virtual = virtualMassPrior(setup.bow).value;
  const [mass, other] = [own.arrow.flying.mass + virtual, arrow.flying.mass + virtual];
  const shot = speed === null ? si<'m/s'>(own.speed * Math.sqrt(mass / other)) : speed.value;
  const found = spineVerdict(own, { arrow, speed: shot }, stroke);
  return { load, against: found === null ? null : { ...found, name } };
}

const CHART = "What it should be is on the chart of the shaft's maker, which decides.";

/** What the shaft is like under the push, in words. */
export function spineWords(found: SpineFound | null): string {
  if (found === null) return '';
  const { load, against } = found;
  if (against === null)
    return (
      `Spine: the push of the string is ${percent(load)} of what would buckle this shaft. Mark a build that shoots ` +
      `well from this ` +
      `bow with "shoots_well: true" to compare. ${CHART}`
    );
  const { name, ratio, acts, sameDeflection } = against;
  const beside = `"${name}", which shoots well from this bow`;
  if (acts === 'alike')
    return `Spine: under the push this shaft bends as ${beside}, within ${percent(Math.abs(ratio - 1))}. ${CHART}`;
  return (
    `Spine: under the push this shaft acts ${acts} than ${beside}: loaded ${percent(Math.abs(ratio - 1))} ` +
    `${ratio > 1 ? 'more' : 'less'}. A deflection of about ${sameDeflection.toFixed(0)} would make them alike. ${CHART}`
  );
}

const percent = (share: number): string => `${(100 * share).toFixed(0)} %`;

/** Under the keys of the contract. */
export const spineData = (found: SpineFound | null): object | null =>
  found === null
    ? null
    : {
        push_load: found.load,
        against:
          found.against === null
            ? null
            : {
                name: found.against.name,
                push_load: found.against.goodLoad,
                ratio: found.against.ratio,
                acts: found.against.acts,
                same_deflection: found.against.sameDeflection,
              },
      };
