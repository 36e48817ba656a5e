/** An error on the target wider than this tells no archer anything: no mark ties the numbers of the scale to the arrow yet. */
const WIDEST = 2; // m

/** Whether a standard uncertainty on the target (m) is worth printing. */
export const isToldSpread = (sd: number): boolean => sd < WIDEST;
