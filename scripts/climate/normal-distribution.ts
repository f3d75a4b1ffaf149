/** The standard normal distribution: the share below a value, and the value below which a share lies. */

/**
 * The standard normal quantile: the z below which the share `p` of the distribution lies, 0 < p < 1. The ends give
 * minus and plus infinity, anything outside them NaN.
 *
 * Source: M. J. Wichura, Algorithm AS 241: The Percentage Points of the Normal Distribution, Applied
 * Statistics 37 (3), 1988, routine PPND16; relative error about 1e-16.
 */
export function normalQuantile(p: number): number {
  if (Number.isNaN(p) || p < 0 || p > 1) return NaN;
  if (p === 0) return -Infinity;
  if (p === 1) return Infinity;
  const fromMiddle = p - 0.5;
  if (Math.abs(fromMiddle) <= 0.425) {
    const r = 0.425 ** 2 - fromMiddle ** 2;
    return (fromMiddle * polynomial(centre.top, r)) / polynomial(centre.bottom, r);
  }
  const r = Math.sqrt(-Math.log(Math.min(p, 1 - p)));
  const { top, bottom, from } = r <= 5 ? tail : farTail;
  const size = polynomial(top, r - from) / polynomial(bottom, r - from);
  return fromMiddle < 0 ? -size : size;
}

/**
 * The share of the standard normal distribution below z, for every z.
 *
 * Source: J. F. Hart et al., Computer Approximations, 1968, algorithm 5666, as restated by G. West, Better
 * Approximations to Cumulative Normal Functions, Wilmott Magazine, 2005; absolute error below 1e-14.
 */
export function normalShareBelow(z: number): number {
  const size = Math.abs(z);
  const bell = Math.exp(-(size ** 2) / 2);
  const beyond =
    size < 7.07106781186547
      ? (bell * polynomial(hart.top, size)) / polynomial(hart.bottom, size)
      : bell / continuedFraction(size) / Math.sqrt(2 * Math.PI);
  return z > 0 ? 1 - beyond : beyond;
}

/** x + 1/(x + 2/(x + 3/(x + 4/(x + 0.65)))), Hart's form of the far tail. */
function continuedFraction(x: number): number {
  return [4, 3, 2, 1].reduce((sum, top) => x + top / sum, x + 0.65);
}

/** Coefficients from the highest power down. */
function polynomial(coefficients: readonly number[], x: number): number {
  return coefficients.reduce((sum, coefficient) => sum * x + coefficient, 0);
}

const centre = {
  top: [
    2.5090809287301226727e3, 3.3430575583588128105e4, 6.7265770927008700853e4, 4.5921953931549871457e4,
    1.3731693765509461125e4, 1.9715909503065514427e3, 1.3314166789178437745e2, 3.387132872796366608,
  ],
  bottom: [
    5.226495278852854561e3, 2.8729085735721942674e4, 3.930789580009271061e4, 2.1213794301586595867e4,
    5.3941960214247511077e3, 6.871870074920579083e2, 4.2313330701600911252e1, 1,
  ],
};

const tail = {
  from: 1.6,
  top: [
    7.7454501427834140764e-4, 2.27238449892691845833e-2, 2.4178072517745061177e-1, 1.27045825245236838258,
    3.64784832476320460504, 5.7694972214606914055, 4.6303378461565452959, 1.42343711074968357734,
  ],
  bottom: [
    1.05075007164441684324e-9, 5.475938084995344946e-4, 1.51986665636164571966e-2, 1.4810397642748007459e-1,
    6.8976733498510000455e-1, 1.6763848301838038494, 2.05319162663775882187, 1,
  ],
};

const farTail = {
  from: 5,
  top: [
    2.01033439929228813265e-7, 2.71155556874348757815e-5, 1.2426609473880784386e-3, 2.6532189526576123093e-2,
    2.9656057182850489123e-1, 1.7848265399172913358, 5.4637849111641143699, 6.6579046435011037772,
  ],
  bottom: [
    2.04426310338993978564e-15, 1.4215117583164458887e-7, 1.8463183175100546818e-5, 7.868691311456132591e-4,
    1.48753612908506148525e-2, 1.3692988092273580531e-1, 5.9983220655588793769e-1, 1,
  ],
};

const hart = {
  top: [
    3.52624965998911e-2, 0.700383064443688, 6.37396220353165, 33.912866078383, 112.079291497871,
    221.213596169931, 220.206867912376,
  ],
  bottom: [
    8.83883476483184e-2, 1.75566716318264, 16.064177579207, 86.7807322029461, 296.564248779674,
    637.333633378831, 793.826512519948, 440.413735824752,
  ],
};
