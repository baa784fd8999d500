/**
 * Angles, roots and logarithms that come to the same bits in every JavaScript engine: the standard leaves the last digits of
 * `Math.sin` and its like to the engine (ECMA-262, 21.3.2), and two that we run in differ. Made of the operations that
 * IEEE 754 rounds exactly, by the method of fdlibm (Sun Microsystems' freely distributable library): argument reduction
 * in two parts, then its minimax polynomials. Within 2 units in the last place.
 */
export function sin(x: number): number {
  reduce(x);
  switch (quadrant) {
    case 0:
      return sinNear(high, low);
    case 1:
      return cosNear(high, low);
    case 2:
      return -sinNear(high, low);
    default:
      return -cosNear(high, low);
  }
}

export function cos(x: number): number {
  reduce(x);
  switch (quadrant) {
    case 0:
      return cosNear(high, low);
    case 1:
      return -sinNear(high, low);
    case 2:
      return -cosNear(high, low);
    default:
      return sinNear(high, low);
  }
}

export function tan(x: number): number {
  reduce(x);
  const s = sinNear(high, low);
  const c = cosNear(high, low);
  return quadrant % 2 === 0 ? s / c : -c / s;
}

export function atan(x: number): number {
  const size = Math.abs(x);
  const sign = x < 0 ? -1 : 1;
  if (!(size >= 7 / 16)) return x - x * atanSeries(x);
  if (size > 1e19) return sign * (Math.PI / 2);
  if (size < 11 / 16) return sign * atanAbout(halfAtan, halfAtanLow, (2 * size - 1) / (2 + size));
  if (size < 19 / 16) return sign * atanAbout(Math.PI / 4, quarterLow, (size - 1) / (size + 1));
  if (size < 39 / 16) return sign * atanAbout(moreAtan, moreAtanLow, (size - 1.5) / (1 + 1.5 * size));
  return sign * atanAbout(Math.PI / 2, 2 * quarterLow, -1 / size);
}

/** As `Math.atan2`: the direction of (x, y), −π to π, with the signs of zeros as IEEE 754 has them. */
export function atan2(y: number, x: number): number {
  const isLeft = x < 0 || Object.is(x, -0);
  const isBelow = y < 0 || Object.is(y, -0);
  // 0 / 0 is along x; anything over 0 is a quarter turn.
  const angle = y === 0 ? 0 : atan(Math.abs(y / x));
  const upper = isLeft ? Math.PI - (angle - 4 * quarterLow) : angle;
  return isBelow ? -upper : upper;
}

export const asin = (x: number): number => atan2(x, Math.sqrt((1 - x) * (1 + x)));

export const acos = (x: number): number => 2 * atan2(Math.sqrt(1 - x), Math.sqrt(1 + x));

/** Cube root by Halley's steps from a guess that a third of the exponent gives. */
export function cbrt(x: number): number {
  if (x === 0 || !Number.isFinite(x)) return x;
  float[0] = Math.abs(x);
  // Below the normal numbers the exponent is not in the bits: 2^54 brings them up, 2^18 takes it back.
  const isTiny = (words[1] as number) < 0x00100000;
  if (isTiny) float[0] = Math.abs(x) * 2 ** 54;
  const size = float[0];
  words[1] = Math.floor((words[1] as number) / 3) + thirdOfBias;
  words[0] = 0;
  let root = float[0];
  for (let k = 0; k < 4; k++) {
    const wanted = size / (root * root);
    root += (root * (wanted - root)) / (2 * root + wanted);
  }
  const scaled = isTiny ? root / 2 ** 18 : root;
  return x < 0 ? -scaled : scaled;
}

export function log(x: number): number {
  if (!(x > 0) || x === Infinity) return x === 0 ? -Infinity : x === Infinity ? x : NaN;
  const isTiny = x < 2 ** -1022;
  float[0] = isTiny ? x * 2 ** 54 : x;
  let exponent = ((words[1] as number) >> 20) - 1023 - (isTiny ? 54 : 0);
  words[1] = ((words[1] as number) & 0x000fffff) | 0x3ff00000;
  let part = float[0];
  if (part > Math.SQRT2) {
    part /= 2;
    exponent += 1;
  }
  const f = part - 1;
  const s = f / (2 + f);
  const z = s * s;
  const w = z * z;
  const even = w * (3.999999999940941908e-1 + w * (2.222219843214978396e-1 + w * 1.531383769920937332e-1));
  const odd =
    z *
    (6.66666666666673513e-1 +
      w * (2.857142874366239149e-1 + w * (1.818357216161805012e-1 + w * 1.479819860511658591e-1)));
  const half = (f * f) / 2;
  return exponent * ln2High - (half - (s * (half + odd + even) + exponent * ln2Low) - f);
}

/** The decimal logarithm. For whole powers of ten use `decadeOf`. */
export const log10 = (x: number): number => log(x) / Math.LN10;

/** The exponent of the greatest power of ten that is no more than a positive number. */
export function decadeOf(x: number): number {
  const near = Math.round(log10(x));
  return powerOfTen(near) <= x ? (powerOfTen(near + 1) <= x ? near + 1 : near) : near - 1;
}

/** 10 to a whole power, rounded as a literal is. */
export const powerOfTen = (exponent: number): number => Number(`1e${exponent}`);

/** What `reduce` found: x less a multiple of a quarter turn, in two parts, and which quadrant that leaves. */
let high = 0;
let low = 0;
let quadrant = 0;

function reduce(x: number): void {
  if (Math.abs(x) <= Math.PI / 4) {
    [high, low, quadrant] = [x, 0, 0];
    return;
  }
  const within = Math.abs(x) < farthest ? x : x % (2 * Math.PI);
  const turns = Math.round(within * (2 / Math.PI));
  // Two parts of π/2 of 33 bits, whose products with a small whole number are exact, and the rest.
  const first = within - turns * firstPart;
  const second = turns * secondPart;
  const rest = first - second;
  const lost = turns * thirdPart - (first - rest - second);
  high = rest - lost;
  low = rest - high - lost;
  quadrant = ((turns % 4) + 4) % 4;
}

/** sin of x + y for |x| up to π/4 and a y that only corrects it. */
function sinNear(x: number, y: number): number {
  const z = x * x;
  const v = z * x;
  const r =
    8.33333333332248946124e-3 +
    z *
      (-1.98412698298579493134e-4 +
        z * (2.75573137070700676789e-6 + z * (-2.50507602534068634195e-8 + z * 1.58969099521155010221e-10)));
  return x - (z * (y / 2 - v * r) - y + v * 1.66666666666666324348e-1);
}

function cosNear(x: number, y: number): number {
  const z = x * x;
  const r =
    z *
    (4.16666666666666019037e-2 +
      z *
        (-1.38888888888741095749e-3 +
          z *
            (2.48015872894767294178e-5 +
              z *
                (-2.75573143513906633035e-7 +
                  z * (2.0875723212981748279e-9 + z * -1.13596475577881948265e-11)))));
  const half = z / 2;
  const w = 1 - half;
  return w + (1 - w - half + (z * r - x * y));
}

/** (x − atan x) / x for |x| below 7/16. */
function atanSeries(x: number): number {
  const z = x * x;
  const w = z * z;
  const even =
    z *
    (3.33333333333329318027e-1 +
      w *
        (1.42857142725034663711e-1 +
          w *
            (9.09088713343650656196e-2 +
              w *
                (6.66107313738753120669e-2 +
                  w * (4.97687799461593236017e-2 + w * 1.62858201153657823623e-2)))));
  const odd =
    w *
    (-1.99999999998764832476e-1 +
      w *
        (-1.1111110405462355788e-1 +
          w *
            (-7.69187620504482999495e-2 + w * (-5.83357013379057348645e-2 + w * -3.6531572744216915527e-2))));
  return even + odd;
}

/** An arc tangent from a known one, in two parts, and the tangent of the difference. */
const atanAbout = (known: number, rest: number, x: number): number => known - (x * atanSeries(x) - rest - x);

const halfAtan = 4.63647609000806093515e-1;
const halfAtanLow = 2.26987774529616870924e-17;
const moreAtan = 9.82793723247329054082e-1;
const moreAtanLow = 1.39033110312309984516e-17;
/** What π/4 as a double lacks. */
const quarterLow = 3.06161699786838301793e-17;

const firstPart = 1.57079632673412561417;
const secondPart = 6.0771005063039659766e-11;
const thirdPart = 2.02226624879595063154e-21;
/** Radians up to which the products with the parts of π/2 are exact. */
const farthest = 1_000_000;

const ln2High = 6.9314718036912381649e-1;
const ln2Low = 1.90821492927058770002e-10;

const float = new Float64Array(1);
/** The low and the high half of its bits; all machines that run us store the low one first. */
const words = new Uint32Array(float.buffer);
/** Two thirds of the exponent's bias in the high word, less what makes the guess even. */
const thirdOfBias = 715_094_163;
