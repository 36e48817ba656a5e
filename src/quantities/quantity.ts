declare const unit: unique symbol;

/** A number known to be in one SI unit. The brand exists only for the type checker. */
export type Quantity<Unit extends string> = number & { readonly [unit]: Unit };

/** Vouch that `value` is already in the SI unit named by the type. */
export const si = <Unit extends string>(value: number): Quantity<Unit> => value as Quantity<Unit>;

export type Metres = Quantity<'m'>;
export type SquareMetres = Quantity<'m2'>;
export type Seconds = Quantity<'s'>;
export type MetresPerSecond = Quantity<'m/s'>;
export type Kilograms = Quantity<'kg'>;
export type KilogramsPerMetre = Quantity<'kg/m'>;
export type KilogramsPerCubicMetre = Quantity<'kg/m3'>;
export type KilogramSquareMetres = Quantity<'kg m2'>;
export type Newtons = Quantity<'N'>;
export type NewtonSquareMetres = Quantity<'N m2'>;
export type Joules = Quantity<'J'>;
export type Kelvin = Quantity<'K'>;
export type Pascals = Quantity<'Pa'>;
export type PascalSeconds = Quantity<'Pa s'>;
export type Radians = Quantity<'rad'>;
export type RadiansPerMetre = Quantity<'rad/m'>;
export type RadiansPerSecond = Quantity<'rad/s'>;
/** A pure number: a fraction, a coefficient, a ratio. */
export type Ratio = Quantity<'1'>;
