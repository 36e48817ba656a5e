/** What the rigid model still flies; a launch far worse than any tune leaves. */
export const WORST_LAUNCH = { angle: '20 deg', nockTravel: '30 fps' } as const;
