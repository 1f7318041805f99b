// Exact numbers: a fraction of two whole numbers of any size. A half is a half here, and a third is a third.
"use strict";

const whole = (number) => ({ top: BigInt(number), bottom: 1n });
const ZERO = whole(0);
const HALF = { top: 1n, bottom: 2n };
const NOISE = { top: 1n, bottom: 1000000n }; // a millionth of a mm: lengths nearer than this are the same length

function fraction(top, bottom) {
  if (bottom < 0n) return fraction(-top, -bottom);
  let a = top < 0n ? -top : top;
  let b = bottom;
  while (b) [a, b] = [b, a % b];
  return { top: top / a, bottom: bottom / a };
}

// A length in mm as it stands in the data, to a millionth.
const fromMm = (mm) => fraction(BigInt(Math.round(mm * 1e6)), 1000000n);
const toGrain = (a) => fraction(floor(plus(times(a, whole(1000000)), HALF)), 1000000n);
const fromText = (text) => fraction(...text.split("/").map(BigInt));
const toNumber = (a) => Number(a.top * 1000000n / a.bottom) / 1e6;

const plus = (a, b) => fraction(a.top * b.bottom + b.top * a.bottom, a.bottom * b.bottom);
const minus = (a, b) => fraction(a.top * b.bottom - b.top * a.bottom, a.bottom * b.bottom);
const times = (a, b) => fraction(a.top * b.top, a.bottom * b.bottom);
const over = (a, b) => fraction(a.top * b.bottom, a.bottom * b.top);

const less = (a, b) => a.top * b.bottom < b.top * a.bottom;
const same = (a, b) => a.top === b.top && a.bottom === b.bottom;
const least = (...all) => all.reduce((a, b) => (less(b, a) ? b : a));
const greatest = (...all) => all.reduce((a, b) => (less(a, b) ? b : a));
const size = (a) => (a.top < 0n ? { top: -a.top, bottom: a.bottom } : a);

function floor(a) {
  const down = a.top / a.bottom; // towards nought, so one too high below it
  return a.top < 0n && a.top % a.bottom ? down - 1n : down;
}
const ceil = (a) => -floor({ top: -a.top, bottom: a.bottom });

// Whole divisions of the rod: the nearest (a half goes up), the most that fit, the fewest that reach.
const nearestCount = (a, step) => floor(plus(over(a, step), HALF));
const countBelow = (a, step) => floor(over(plus(a, NOISE), step));
const countAbove = (a, step) => ceil(over(minus(a, NOISE), step));
