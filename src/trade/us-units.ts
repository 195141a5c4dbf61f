/** US customary units in SI, in which much of the trade's knowledge is printed. Exact by definition (NIST Special Publication 811). */

/** m */
export const inch = 0.0254
/** m */
export const foot = 0.3048
/** kg */
export const pound = 0.45359237
/** N: a pound under standard gravity, 9.80665 m/s2. */
export const poundForce = pound * 9.80665
/** N/m, of edge crush strength. */
export const poundForcePerInch = poundForce / inch
/** Pa */
export const psi = poundForce / (inch * inch)
