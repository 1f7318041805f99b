// Lengths as people write them, as they are shown, and as they are read aloud.
"use strict";

const MM_PER = { mm: whole(1), cm: whole(10), m: whole(1000), in: fraction(127n, 5n), ft: fraction(1524n, 5n) };
const SAME_AS = {
  millimetre: "mm", millimetres: "mm", millimeter: "mm", millimeters: "mm", mms: "mm",
  centimetre: "cm", centimetres: "cm", centimeter: "cm", centimeters: "cm", cms: "cm",
  metre: "m", metres: "m", meter: "m", meters: "m",
  "'": "ft", feet: "ft", foot: "ft", '"': "in", inch: "in", inches: "in", ins: "in",
};
const FRACTIONS = { "½": "1/2", "¼": "1/4", "¾": "3/4", "⅛": "1/8", "⅜": "3/8", "⅝": "5/8", "⅞": "7/8", "⅓": "1/3", "⅔": "2/3" };
const THOUSANDS = "[0-9]{1,3}(?: [0-9]{3})+(?![0-9/.,])";
const MIXED = "[0-9]+(?: *- *| +)[0-9]+ ?/ ?[0-9]+";
const NUMBER = `${THOUSANDS}|${MIXED}|[0-9]+ ?/ ?[0-9]+|[0-9]*[.,][0-9]+|[0-9]+[.]?`;
const UNIT = [...Object.keys(MM_PER), ...Object.keys(SAME_AS)].sort((a, b) => b.length - a.length).join("|");
const PART = new RegExp(` *(-?) *(${NUMBER}) *(?:(${UNIT})(?![a-z])[.]?|(?![a-z.,/0-9])) *`, "iy");
const COULD_BE_THOUSANDS = /^[1-9][0-9]{0,2}[.,][0-9]{3}$/;
const TRY = "Write it like 4.905 m, 345 mm or 10' 6 3/8\".";

class Unclear extends Error {}

const dotted = (written) => written.replace(",", ".").replace(/\.$/, "").replace(/^\./, "0.");
const unmarked = (written) => written.replace(/[.,]/g, "");
const imperial = (unit) => unit === "ft" || unit === "in";

// The length a person wrote, exactly, in mm, as is a number without a unit. What could be two lengths is refused.
function readLength(text) {
  const parts = partsOf(tidied(text));
  if (parts.length === 1 && !parts[0].unit) refuseUnclearBare(parts[0].written);
  const measured = parts.map((part, at) => {
    const before = at ? parts[at - 1].unit : null;
    const unit = part.unit || (parts.length === 1 ? "mm" : before === "ft" ? "in" : null);
    if (!unit) throw new Unclear(`There is a number with no unit. ${TRY}`);
    return { number: numberOf(part.written, unit), unit };
  });
  refuseDisorder(measured);
  return measured.reduce((total, part) => plus(total, times(part.number, MM_PER[part.unit])), ZERO);
}

function tidied(text) {
  if (text.length > 60) throw new Unclear(`That is too long to be a length. ${TRY}`);
  let tidy = text.replace(/[′’‘ʹ´]/g, "'").replace(/[″”“ʺ]/g, '"').replace(/[⁄∕]/g, "/").replace(/[−–‐‑]/g, "-");
  tidy = tidy.replace(/\s+/g, " ").trim().replace(/''/g, '"');
  for (const [sign, words] of Object.entries(FRACTIONS)) tidy = tidy.split(sign).join(` ${words} `);
  tidy = tidy.trim();
  if (!tidy) throw new Unclear(`No length is written. ${TRY}`);
  if (tidy.startsWith("-")) throw new Unclear("A batten stands above the fascia face: write it without a minus.");
  if (/[.,][0-9]+[.,]/.test(tidy)) throw new Unclear("There is more than one decimal mark. Write thousands without one, like 1234.5 mm.");
  return tidy;
}

function partsOf(tidy) {
  const parts = [];
  for (PART.lastIndex = 0; PART.lastIndex < tidy.length;) {
    const found = PART.exec(tidy);
    const dashInPlace = parts.length > 0 && parts[parts.length - 1].unit === "ft";
    if (!found || (found[1] && !dashInPlace)) throw new Unclear(`That cannot be read as a length. ${TRY}`);
    const word = found[3] ? found[3].toLowerCase() : null;
    parts.push({ written: found[2], unit: word && (SAME_AS[word] || word) });
  }
  return parts;
}

function refuseUnclearBare(written) {
  if (written.includes("/")) throw new Unclear(`${written} of what? Write ${written} in or ${written}".`);
  if (!/[.,]/.test(written)) return;
  const thousands = COULD_BE_THOUSANDS.test(written);
  if (!thousands && Number(dotted(written)) >= 100) return;
  throw new Unclear(`Could be ${thousands ? unmarked(written) : dotted(written)} mm or ${dotted(written)} m: write the one you mean, with its unit.`);
}

function numberOf(written, unit) {
  if (written.includes("/")) {
    const digits = written.match(/[0-9]+/g).map(BigInt);
    const [top, bottom] = digits.slice(-2);
    if (bottom === 0n) throw new Unclear(`That divides by nothing. ${TRY}`);
    if (top >= bottom) throw new Unclear(`${written} has a fraction of one or more: write it as a whole number and a smaller fraction.`);
    return plus(digits.length > 2 ? whole(digits[0]) : ZERO, fraction(top, bottom));
  }
  if (written.includes(" ")) {
    if (unit !== "mm") throw new Unclear(`There are two numbers before one unit. ${TRY}`);
    return whole(written.replace(/ /g, ""));
  }
  const sure = unit === "m" || (imperial(unit) && !written.includes(","));
  if (COULD_BE_THOUSANDS.test(written) && !sure) {
    throw new Unclear(`Could be ${unmarked(written)} ${unit} or ${dotted(written)} ${unit}: write the first without its mark, or the second to two places.`);
  }
  const [before, after = ""] = dotted(written).split(".");
  return fraction(BigInt(before + after), 10n ** BigInt(after.length));
}

function refuseDisorder(measured) {
  for (let at = 1; at < measured.length; at += 1) {
    const [larger, smaller] = [measured[at - 1], measured[at]];
    if (imperial(larger.unit) !== imperial(smaller.unit)) throw new Unclear(`That mixes feet and inches with metric. ${TRY}`);
    if (!less(MM_PER[smaller.unit], MM_PER[larger.unit])) throw new Unclear(`The units are out of order: the larger comes first. ${TRY}`);
    if (larger.number.bottom !== 1n) throw new Unclear(`There is a part of a ${larger.unit} and ${smaller.unit} besides. ${TRY}`);
    if (!less(times(smaller.number, MM_PER[smaller.unit]), MM_PER[larger.unit])) {
      throw new Unclear(`There is more ${smaller.unit} than goes into one ${larger.unit}. ${TRY}`);
    }
  }
}

const MILLIMETRE = whole(1);
const SIXTEENTH = fraction(127n, 80n);
const decimal = (count, places) => {
  const digits = String(count < 0n ? -count : count).padStart(places + 1, "0");
  const cut = digits.length - places;
  return `${count < 0n ? "−" : ""}${digits.slice(0, cut)}${places ? `.${digits.slice(cut)}` : ""}`;
};

// The parts of a length as it is shown: the figure, the fraction of an inch, the unit.
function shownParts(length, unit) {
  if (unit !== "ft-in") {
    const count = nearestCount(length, MILLIMETRE);
    return { figure: decimal(count, { mm: 0, cm: 1, m: 3 }[unit]), part: "", unit };
  }
  return feetAndInches(nearestCount(length, SIXTEENTH));
}

function feetAndInches(count) {
  const sixteenths = count < 0n ? -count : count;
  const [feet, inches] = [sixteenths / 192n, (sixteenths % 192n) / 16n];
  const part = fraction(sixteenths % 16n, 16n);
  const sign = count < 0n ? "−" : "";
  const inWords = inches || !part.top ? String(inches) : "";
  const figure = feet ? `${feet}' ${inWords}`.trimEnd() : inWords;
  return { figure: sign + figure, part: part.top ? `${part.top}/${part.bottom}` : "", unit: '"' };
}

function shown(length, unit) {
  const parts = shownParts(length, unit);
  if (unit !== "ft-in") return `${parts.figure} ${unit}`;
  return `${[parts.figure, parts.part].filter(Boolean).join(" ")}"`;
}

// To a tenth of a mm, or a sixteenth: `down` for what must reach a least, `up` for what is out, so that none flatters.
function shownFine(length, unit, way) {
  const round = { down: countBelow, up: countAbove, near: nearestCount }[way];
  if (unit === "ft-in") return shown(times(whole(round(length, SIXTEENTH)), SIXTEENTH), unit);
  const tenths = round(times(length, whole(10)), MILLIMETRE);
  if (tenths % 10n === 0n) return shown(whole(tenths / 10n), unit);
  return `${decimal(tenths, { mm: 1, cm: 2, m: 4 }[unit])} ${unit}`;
}

const PARTS_SAID = { "1/2": "a half", "1/4": "a quarter", "3/4": "three quarters" };

// The length as one roofer calls it to another.
function said(length, unit) {
  const parts = shownParts(length, unit);
  const minusSaid = parts.figure.startsWith("−") ? "minus " : "";
  const figure = parts.figure.replace("−", "");
  if (unit !== "ft-in") return `${minusSaid}${figure} ${{ mm: "millimetres", cm: "centimetres", m: "metres" }[unit]}`;
  const [, feet, inches] = figure.match(/^(?:(\d+)')? ?(\d+)?$/);
  const words = [];
  if (feet) words.push(`${feet} ${feet === "1" ? "foot" : "feet"}`);
  const part = parts.part && partSaid(parts.part);
  if (inches && part) words.push(`${inches} and ${part} inches`);
  else if (part) words.push(`${part} of an inch`);
  else if (inches !== "0" || !feet) words.push(`${inches} ${inches === "1" ? "inch" : "inches"}`);
  return minusSaid + words.join(", ");
}

function partSaid(part) {
  if (PARTS_SAID[part]) return PARTS_SAID[part];
  const [top, bottom] = part.split("/");
  return `${top} ${{ 8: "eighth", 16: "sixteenth" }[bottom]}${top === "1" ? "" : "s"}`;
}
