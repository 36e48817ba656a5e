/** Standard deviations of a sorted dozen and a steady bow, as typed; the reasons stand beside the options of `scatter`. */
export const USUAL_DOZEN = {
  mass: '1 gr',
  balance: '0.05 in',
  speed: '1 fps',
  bend: '0.0015 in',
  vane: '0.5 deg',
  head: '0.1 deg',
  nockTravel: '0.075 fps',
} as const;
