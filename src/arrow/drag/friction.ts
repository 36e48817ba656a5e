/**
 * Mean friction of a smooth flat plate, laminar.
 *
 *   Cf = 1.328 / sqrt(R)
 *
 * @param R Reynolds number on the length, above 0
 * @returns friction force / (dynamic pressure x wetted area)
 * @source Blasius's solution, as in Schlichting, Boundary-Layer Theory, chapter VII
 * @checked reference/plate-friction
 */
export const laminarPlate = (R: number): number => BLASIUS / Math.sqrt(R);

const BLASIUS = 1.328;

/**
 * Mean friction of a smooth flat plate, turbulent from its front.
 *
 *   Cf = 0.074 R^(-1/5)
 *
 * Stated for 5e5 < R < 1e7. Vanes at 1e5 are below that; the logarithmic law is 4 % lower there.
 *
 * @param R Reynolds number on the length, above 0
 * @source Schlichting, Boundary-Layer Theory, chapter XXI, the 1/5-power law
 * @checked reference/plate-friction
 */
export const turbulentPlate = (R: number): number => 0.074 * R ** -0.2;

/**
 * Mean friction along the outside of a long thin cylinder in line with the flow, laminar.
 *
 *   Cf = 1.328 / sqrt(R) [1 + 0.2605 xi / (1 + 0.6512 xi)^0.2277],   xi = 8 (l / d) / sqrt(R)
 *
 * The bracket is our fit to a numerical solution of the boundary-layer equations of Seban, Bond and Kelly: within 0.02 %
 * for xi up to 10, so down to a Reynolds number on the diameter of about 80 for an arrow. In flight xi is 0.4 to 0.65, where
 * the usual estimate 2 (l / d) / R adds 3 % too little.
 *
 * @param R Reynolds number on the length l, above 0
 * @param slenderness l / d
 * @source Seban and Bond, J. Aeronaut. Sci. 18 (1951) 671; Kelly, the same 21 (1954) 634
 * @checked reference/laminar-long-cylinder
 */
export function laminarCylinder(R: number, slenderness: number): number {
  const xi = (8 * slenderness) / Math.sqrt(R);
  return laminarPlate(R) * (1 + (0.2605 * xi) / (1 + 0.6512 * xi) ** 0.2277);
}

/**
 * Mean friction along a long thin cylinder, turbulent from its front.
 *
 *   Cf = 0.074 R^(-1/5) + 1.6e-3 (l / d) R^(-2/5)
 *
 * @param R Reynolds number on the length l, above 0
 * @param slenderness l / d
 * @source Hoerner, Fluid-Dynamic Drag, chapter 2 (slender cylinder)
 * @checked reference/plate-friction
 */
export const turbulentCylinder = (R: number, slenderness: number): number =>
  turbulentPlate(R) + 1.6e-3 * slenderness * R ** -0.4;

/**
 * Mean friction when the layer is laminar up to a share of the length and turbulent behind it.
 *
 *   Cf = Ct(1) - s [Ct(s) - Cl(s)]
 *
 * Ct(s), Cl(s): mean friction of the front share s of the surface. Behind the transition the layer is
 * taken as thick as if it had been turbulent from the front. On a plate this is the usual 0.074 R^(-1/5) - B / R with
 * B = R_c [Ct(R_c) - Cl(R_c)].
 *
 * @param share 0 (turbulent throughout) to 1 (laminar throughout)
 * @source Prandtl's assumption, in Schlichting, Boundary-Layer Theory, chapter XXI
 * @checked reference/javelin-drag
 */
export function mixedFriction(
  share: number,
  laminar: (share: number) => number,
  turbulent: (share: number) => number,
): number {
  if (share >= 1) return laminar(1);
  if (share <= 0) return turbulent(1);
  return turbulent(1) - share * (turbulent(share) - laminar(share));
}
