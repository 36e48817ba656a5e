import { USUAL_SPEED_PER_DEGREE } from '../../bow/temperature.ts';
import type { Prior, Priors } from '../../calibration/parameters.ts';
import type { SetupFile } from '../schema/schema.ts';
import { type DaySettings, temperatureSpan } from './assemble-days.ts';
import { defaultOf } from './defaults.ts';
import { statedSd } from './stated-sd.ts';

/** Days that differ less in temperature tell nothing of a bow's speed by the degree, K. */
const ALIKE = 3;

/** What is known before the marks of the parameters that only some files speak of. */
export function furtherPriors(
  { launch }: SetupFile,
  settings: DaySettings,
  ratio: Prior | null,
): Pick<Priors, 'speed_per_degree' | 'tape_ratio'> {
  const perDegree = perDegreePrior(launch, temperatureSpan(settings) > ALIKE);
  return {
    ...(perDegree === null ? {} : { speed_per_degree: perDegree }),
    ...(ratio === null ? {} : { tape_ratio: ratio }),
  };
}

/** As the file gives it; what is usual where days differ in temperature; null where nothing asks for it. */
function perDegreePrior(launch: SetupFile['launch'], daysDiffer: boolean): Prior | null {
  const { speed_per_degree: value } = launch;
  if (value !== undefined)
    return { value, sd: statedSd.speedPerDegree(launch) ?? defaultOf('launch.speed_per_degree_sd') };
  return daysDiffer ? USUAL_SPEED_PER_DEGREE : null;
}
