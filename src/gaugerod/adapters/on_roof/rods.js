// The rods of a slope as they now stand: as sent, or set out again from where the battens really are.
"use strict";

const UNDER_EAVES = "eaves";
const SHORT = "top";
const isFull = (row) => row.name !== UNDER_EAVES && row.name !== SHORT;

// One row for each mark, from the eaves up: how far above the one before, how far it laps, and what is wrong with it.
function rodsAsSent(slope) {
  return slope.rods.map((rod) => withFaults(slope, slope.cut_top, rod.rows.map((row) => ({
    name: row.name,
    mark: fromMm(row.mark_mm),
    lap: row.lap_mm === null ? null : fromMm(row.lap_mm),
    unit: row.unit_mm === null ? null : fromMm(row.unit_mm),
    kept: row.kept,
  }))));
}

// `kept`: for every rod the battens as they really are, first to last nailed, mm to the grain.
function rodsAgain(slope, step, kept) {
  const limits = slope.re_gauge;
  const answer = carryOn(limits, step, kept.map((marks) => marks.map(fromMm)));
  const rods = answer.rods.map((rod, place) => {
    const laps = lapsOf(limits, answer, rod);
    const rows = rod.marks.map((mark, at) => ({ name: String(at + 1), mark, lap: laps[at], unit: null, kept: at < kept[place].length }));
    return withFaults(slope, answer.parallel, limits.double_lap ? withEnds(limits, step, rows, fromText(limits.lengths[place])) : rows);
  });
  return { answer, rods };
}

function withEnds(limits, step, rows, length) {
  const unit = fromMm(limits.double_lap.under_eaves_length_mm);
  const mark = underEavesMark(limits.double_lap, rows[0].mark, step);
  const short = rows.length > 1 && shortCourse(limits, step, rows.map((row) => row.mark), length);
  return [{ name: UNDER_EAVES, mark, lap: null, unit, kept: false }, ...rows, ...(short ? [{ name: SHORT, kept: false, ...short }] : [])];
}

function withFaults(slope, cutTop, rows) {
  const full = rows.filter(isFull);
  const last = full[full.length - 1];
  return rows.map((row, at) => {
    const gap = at ? minus(row.mark, rows[at - 1].mark) : null;
    const gauged = full.includes(row) && row !== full[0] && !(cutTop && row === last);
    return { ...row, gap, fault: lapFault(slope, row) || (gauged ? gapFault(slope, gap) : null) };
  });
}

// A lap short comes before everything else: that is where the water gets in.
function lapFault(slope, row) {
  if (!row.lap || slope.lap_least_mm === null) return null;
  if (less(row.lap, minus(ZERO, NOISE))) return { what: "NO LAP: OPEN", by: minus(ZERO, row.lap) };
  return faultBelow("LAP SHORT", row.lap, fromMm(slope.lap_least_mm));
}

function gapFault(slope, gap) {
  const most = fromMm(slope.gauge_max_mm);
  if (less(plus(most, NOISE), gap)) return { what: "GAP TOO WIDE", by: minus(gap, most) };
  return slope.gauge_min_mm === null ? null : faultBelow("GAP TOO CLOSE", gap, fromMm(slope.gauge_min_mm));
}

const faultBelow = (what, length, limit) => (less(length, minus(limit, NOISE)) ? { what, by: minus(limit, length) } : null);

// Rods with the same marks are read as one.
function sharedRods(rods) {
  const groups = [];
  rods.forEach((rows, at) => {
    const alike = groups.find((group) => sameRows(rods[group[0]], rows));
    if (alike) alike.push(at);
    else groups.push([at]);
  });
  return groups;
}

const sameRows = (a, b) => a.length === b.length && a.every((row, at) => same(row.mark, b[at].mark) && row.kept === b[at].kept);
