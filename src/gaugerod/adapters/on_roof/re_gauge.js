// Carry on from here: battens already nailed are kept where they are, and the rest is set out again from the last of
// them. The same rules in the same order as the program's own setting out, in exact numbers, so the same marks.
"use strict";

const BATTEN_WIDTH = whole(38); // nearer than this, two battens cannot both be nailed

// What every step below goes by. `limits` are the page's figures for the slope.
function groundOf(limits, step) {
  const [topLeast, topWished, topGreatest] = ["least", "wished", "greatest"].map((end) => fromText(limits.top_marked[end]));
  return {
    step,
    least: limits.gauge_least_count === null ? null : times(whole(limits.gauge_least_count), step),
    greatest: times(whole(limits.gauge_greatest_count), step),
    topWished,
    shorten: minus(topGreatest, topWished),
    lengthen: minus(topWished, topLeast),
    lengths: limits.lengths.map(fromText),
  };
}

const holds = (ground, gauge) => !less(ground.greatest, gauge) && (ground.least === null || !less(gauge, ground.least));

const fewestGauges = (span, ground) => ceil(over(span, ground.greatest));

// The least change of every span that brings `count` gauges into range at every rod; null when none does.
function shiftToFit(count, spans, ground) {
  const highest = minus(times(whole(count), ground.greatest), spans.greatest);
  if (ground.least === null) return least(highest, ZERO);
  const lowest = minus(times(whole(count), ground.least), spans.least);
  return less(highest, lowest) ? null : greatest(lowest, least(highest, ZERO));
}

function leastShift(spans, ground) {
  const first = fewestGauges(minus(spans.greatest, ground.shorten), ground);
  let last = fewestGauges(spans.greatest, ground);
  if (ground.least !== null) last = floor(over(plus(spans.least, ground.lengthen), ground.least));
  let found = null;
  for (let count = first < 1n ? 1n : first; count <= last; count += 1n) {
    const shift = shiftToFit(count, spans, ground);
    const allowed = shift !== null && !less(shift, minus(ZERO, ground.shorten)) && !less(ground.lengthen, shift);
    if (allowed && (found === null || less(size(shift), size(found.shift)))) found = { count, shift };
  }
  return found;
}

// Equal gauges as wished; else the lesser of two remedies: the top course cut along the ridge, or the top batten moved.
function choosePlan(spans, ground) {
  const count = fewestGauges(spans.greatest, ground);
  const taper = minus(spans.greatest, spans.least);
  const asWished = { fits: true, parallel: false, count, shift: ZERO };
  if (holds(ground, over(spans.greatest, whole(count))) && holds(ground, over(spans.least, whole(count)))) return asWished;
  const cut = less(ZERO, taper) ? leastShift({ least: spans.greatest, greatest: spans.greatest }, ground) : null;
  const lastGap = cut && minus(over(plus(spans.greatest, cut.shift), whole(cut.count)), taper);
  const cutServes = cut && !less(lastGap, BATTEN_WIDTH);
  const moved = leastShift(spans, ground);
  if (cutServes && (!moved || !less(size(moved.shift), plus(taper, size(cut.shift))))) return { fits: true, parallel: true, ...cut };
  if (moved) return { fits: true, parallel: false, ...moved };
  return { ...asWished, fits: false };
}

function spansAbove(last, ground) {
  const spans = ground.lengths.map((length, place) => minus(minus(length, ground.topWished), last[place]));
  return { each: spans, least: least(...spans), greatest: greatest(...spans) };
}

// Marks above a batten that need not stand on a whole division: the nearest, held so that no lap is short.
function marksAbove(kept, gauge, count, ground) {
  const { step } = ground;
  const most = floor(over(ground.greatest, step));
  const highest = floor(over(kept, step));
  let [fewest, lowest] = [floor(over(gauge, step)), highest];
  if (ground.least !== null && !less(gauge, ground.least)) [fewest, lowest] = [ceil(over(ground.least, step)), ceil(over(kept, step))];
  const marks = [];
  for (let k = 1n; k <= count; k += 1n) {
    let mark = nearestCount(plus(kept, times(whole(k), gauge)), step);
    if (mark < lowest + k * fewest) mark = lowest + k * fewest;
    if (mark > highest + k * most) mark = highest + k * most;
    marks.push(times(whole(mark), step));
  }
  return marks;
}

function topMarkAt(marks, kept, top, ground) {
  const below = marks.length > 1 ? marks[marks.length - 2] : kept;
  const highest = countBelow(plus(below, ground.greatest), ground.step);
  const mark = nearestCount(top, ground.step);
  return [...marks.slice(0, -1), times(whole(mark < highest ? mark : highest), ground.step)];
}

// The fewest of the last nailed battens to take down so that the rest sets out; null when none mends it.
function fewestTakenDown(kept, ground) {
  for (let left = kept[0].length - 1; left > 0; left -= 1) {
    const spans = spansAbove(kept.map((marks) => marks[left - 1]), ground);
    if (!less(spans.least, BATTEN_WIDTH) && choosePlan(spans, ground).fits) return { count: kept[0].length - left, from: left };
  }
  return null;
}

// `kept`: for every rod the battens nailed so far, eaves up, exact mm. The answer has every mark of every rod.
function carryOn(limits, step, kept) {
  const ground = groundOf(limits, step);
  const spans = spansAbove(kept.map((marks) => marks[marks.length - 1]), ground);
  const room = !less(spans.least, BATTEN_WIDTH);
  const reached = !less(ground.shorten, spans.greatest); // the last one nailed is in the top batten's place, or above it
  if (kept[0].length > 1 && (reached || !room)) {
    const rods = kept.map((marks) => ({ marks, gauge: null, top: marks[marks.length - 1] }));
    return { how: "all-nailed", count: 0n, parallel: false, rods, takenDown: reached ? null : fewestTakenDown(kept, ground) };
  }
  if (!room) return { how: "too-short", count: 0n, parallel: false, rods: [], takenDown: null };
  const plan = choosePlan(spans, ground);
  const rods = kept.map((marks, place) => {
    const last = marks[marks.length - 1];
    const divided = plan.parallel ? spans.greatest : spans.each[place];
    const gauge = over(plus(divided, plan.shift), whole(plan.count));
    const top = minus(ground.lengths[place], minus(ground.topWished, plan.shift));
    const above = marksAbove(last, gauge, plan.count, ground);
    const exactTop = plan.parallel ? top : plus(last, times(whole(plan.count), gauge));
    return { marks: [...marks, ...(plan.parallel ? topMarkAt(above, last, top, ground) : above)], gauge, top: exactTop };
  });
  const takenDown = plan.fits ? null : fewestTakenDown(kept, ground);
  return { how: plan.fits ? "carried-on" : "none", count: plan.count, parallel: plan.parallel, rods, takenDown };
}

// Which ends an answer leaves outside their bands, each by the most at any rod.
function endsOutside(limits, step, answer) {
  const { lengths } = groundOf(limits, step);
  const [topLeast, topGreatest] = limits.top_mm.map(fromMm);
  const [overhangLeast, overhangGreatest] = limits.overhang_mm.map(fromMm);
  const by = { "top-too-high": ZERO, "top-too-low": ZERO, "overhang-short": ZERO, "overhang-long": ZERO, "ridge-lap-short": ZERO };
  answer.rods.forEach((rod, place) => {
    const below = belowApex(limits, rod, lengths[place], step);
    const overhang = minus(fromMm(limits.hanging_length_mm), rod.marks[0]);
    by["top-too-high"] = greatest(by["top-too-high"], minus(topLeast, below));
    by["top-too-low"] = greatest(by["top-too-low"], minus(below, topGreatest));
    by["overhang-short"] = greatest(by["overhang-short"], minus(overhangLeast, overhang));
    by["overhang-long"] = greatest(by["overhang-long"], minus(overhang, overhangGreatest));
    by["ridge-lap-short"] = greatest(by["ridge-lap-short"], ridgeLapShort(limits, step, rod.marks, lengths[place]));
  });
  return Object.entries(by).filter(([, out]) => less(NOISE, out)).map(([end, out]) => ({ end, by: out }));
}

// As marked; as exact where the band is so narrow that no mark at all falls inside it, and no lap is at stake.
function belowApex(limits, rod, length, step) {
  const [topLeast, topGreatest] = limits.top_mm.map(fromMm);
  const noMarkFits = !limits.ridge_lap_first && countAbove(minus(length, topGreatest), step) > countBelow(minus(length, topLeast), step);
  return minus(length, noMarkFits ? rod.top : rod.marks[rod.marks.length - 1]);
}

// Double lap, where it is known how far the ridge reaches: what its lap over the second course below falls short by.
function ridgeLapShort(limits, step, marks, length) {
  const figures = limits.double_lap;
  if (!figures || figures.ridge_cover_mm === null) return ZERO;
  const second = marks[marks.length - (shortCourse(limits, step, marks, length) ? 1 : 2)];
  const head = plus(minus(second, fromMm(limits.hanging_length_mm)), minus(fromMm(limits.unit_length_mm), fromMm(figures.lost_at_head_mm)));
  const lap = minus(head, minus(length, fromMm(figures.ridge_cover_mm)));
  return minus(fromMm(figures.headlap_mm), lap);
}

// The lap of every course over the one it must cover; the first full course covers none.
function lapsOf(limits, answer, rod) {
  const unit = fromMm(limits.unit_length_mm);
  const last = rod.marks.length - 1;
  if (!limits.double_lap) {
    const gapAt = (at) => (answer.parallel && at === last ? rod.gauge : minus(rod.marks[at], rod.marks[at - 1]));
    return rod.marks.map((mark, at) => (at === 0 ? null : minus(unit, gapAt(at))));
  }
  const lost = fromMm(limits.double_lap.lost_at_head_mm);
  const underEaves = fromMm(limits.double_lap.under_eaves_length_mm);
  return rod.marks.map((mark, at) => {
    if (at === 0) return null;
    return minus(minus(at === 1 ? underEaves : unit, lost), minus(mark, rod.marks[Math.max(at - 2, 0)]));
  });
}

// Double lap: the mark of the course under the eaves, below the first full one.
function underEavesMark(figures, first, step) {
  const mark = minus(first, fromMm(figures.eaves_below_first_mm));
  return figures.eaves_whole ? times(whole(countBelow(mark, step)), step) : mark;
}

// Double lap: the short course below the ridge; null where the ridge laps the course below the top full one by itself.
function shortCourse(limits, step, marks, length) {
  const figures = limits.double_lap;
  const [unit, hanging, lost] = [limits.unit_length_mm, limits.hanging_length_mm, figures.lost_at_head_mm].map(fromMm);
  const usable = minus(unit, lost);
  const gap = minus(marks[marks.length - 1], marks[marks.length - 2]);
  const last = minus(marks[marks.length - 1], hanging);
  if (figures.ridge_cover_mm !== null) {
    const edge = minus(length, fromMm(figures.ridge_cover_mm));
    if (!less(minus(usable, fromMm(figures.headlap_mm)), minus(edge, minus(last, gap)))) return null;
  }
  const tail = plus(last, gap);
  const lap = minus(usable, times(whole(2), gap));
  if (figures.tops_length_mm !== null) {
    const made = fromMm(figures.tops_length_mm);
    return { mark: minus(plus(tail, made), minus(unit, hanging)), unit: made, lap };
  }
  const clear = times(whole(countBelow(minus(length, fromMm(figures.clear_of_apex_mm)), step)), step);
  const head = least(clear, plus(tail, unit));
  return { mark: minus(head, lost), unit: minus(head, tail), lap };
}
