// Re-gauge: where a batten really is, and the marks above it set out again from there.
"use strict";

function drawAgain(view, row) {
  const { word, re_gauge: limits } = view.slope;
  const whyNot = limits.why_not || (view.line ? "Perps stay where they are. Choose a rod to re-gauge from a batten." : "")
    || (isFull(row) ? "" : `Go to the ${word} that is out of place first.`);
  the("again-head").textContent = whyNot ? "Re-gauge" : `${capital(word)} ${row.name} is not on its mark?`;
  the("again-how").textContent = whyNot || `Say where it really is: its ${view.slope.read}, up the slope from the outer face of the fascia. `
    + `Those below it stay where they are, and the rest is set out again. Left blank: it is on its mark there.`;
  the("again-form").hidden = Boolean(whyNot);
  the("as-sent").hidden = !kept.now.kept[view.s];
  show("again-fault", "");
  if (whyNot) return;
  the("again-fields").replaceChildren(...view.slope.rods.map((_, place) => element("label", "", {
    parts: [
      element("span", `At rod ${place + 1}, ${along(view.slope, place)}`),
      element("input", "", { type: "text", id: `again-${place}`, maxLength: 60, placeholder: shown(fullRows(view, place)[row.name - 1].mark, job.unit) }),
    ],
  })));
}

const fullRows = (view, place) => view.rods[place].filter(isFull);

function setOutAgain() {
  const { view, row } = here();
  try {
    const keptNow = keptWith(view, Number(row.name), view.slope.rods.map((_, place) => the(`again-${place}`).value));
    standAt(view, keptNow, String(Number(row.name) + 1));
  } catch (fault) {
    if (!(fault instanceof Unclear)) throw fault;
    show("again-fault", `▲ ${fault.message}`);
  }
}

// The battens as they really are, with this one where it was typed. Throws Unclear for what cannot be.
function keptWith(view, number, typed) {
  if (typed.every((text) => !text.trim())) throw new Unclear("Type where it really is at one rod or more.");
  const nailed = Math.max(number, fullRows(view, 0).filter((row) => row.kept).length);
  return typed.map((text, place) => {
    const marks = fullRows(view, place).slice(0, nailed).map((row) => row.mark);
    if (text.trim()) marks[number - 1] = toGrain(readLength(text));
    refuseDisorderedBattens(view, marks, place);
    return marks.map(toNumber);
  });
}

function refuseDisorderedBattens(view, marks, place) {
  const word = view.slope.word;
  marks.forEach((mark, at) => {
    if (at === 0 && !less(ZERO, mark)) throw new Unclear(`Rod ${place + 1}: a ${word} stands above the fascia face. Measure up the slope from it.`);
    if (at && !less(marks[at - 1], mark)) {
      throw new Unclear(`Rod ${place + 1}: ${word} ${at + 1} cannot be at or below ${word} ${at}, at ${shown(marks[at - 1], job.unit)}. Measure again, and check the unit.`);
    }
  });
  const length = fromMm(view.slope.rods[place].length_mm);
  if (less(length, marks[marks.length - 1])) throw new Unclear(`Rod ${place + 1}: that is past the apex, at ${shown(length, job.unit)}. Measure again, and check the unit.`);
}

// The slope with these battens kept (null: as sent). Ticks stay only at marks that have not moved.
function standAt(view, keptNow, rowNamed) {
  const { slope, s } = view;
  const again = keptNow ? rodsAgain(slope, step, keptNow) : { answer: null, rods: rodsAsSent(slope) };
  if (again.answer && again.answer.how === "too-short") {
    throw new Unclear(`Between there and the top there is no room for another ${slope.word}: one unit or a flashing covers it.`);
  }
  const moved = (key) => {
    const [, place, name] = key.match(/^\d+\/rod (\d+)\/(.*)$/) || [];
    if (!place || !key.startsWith(`${s}/`)) return false;
    const named = (rows) => rows.find((row) => row.name === name);
    const [before, after] = [named(view.rods[place]), named(again.rods[place])];
    return !before || !after || !same(before.mark, after.mark);
  };
  const marks = { ...kept.now.kept };
  delete marks[s];
  if (keptNow) marks[s] = keptNow;
  const row = rowNamed ? { ...kept.now.row, ...Object.fromEntries(slope.rods.map((_, place) => [`${s}/rod ${place}`, rowNamed])) } : kept.now.row;
  kept.change({ kept: marks, ticked: kept.now.ticked.filter((key) => !moved(key)), row });
  draw({ read: true });
  scrollTo(0, 0);
  the("again-says").open = true;
  if (keptNow) the("again-says").querySelector("summary").focus();
}

// What setting out again did, what mends it, and every limit it could not keep.
function drawAgainSays(view) {
  const box = the("again-says");
  box.hidden = !view.answer;
  if (!view.answer) return;
  const { answer, slope } = view;
  const count = kept.now.kept[view.s][0].length;
  const broken = [...marksBroken(view), ...endsBroken(view)];
  const bad = broken.length > 0 || answer.how === "none";
  const head = {
    "carried-on": `Set out again from ${slope.word} ${count}: ${answer.count} more.`,
    "all-nailed": `All ${count} are nailed; none is to be added.`,
    none: `No even gauge keeps every limit from ${slope.word} ${count} up.`,
  }[answer.how];
  box.classList.toggle("bad", bad);
  box.querySelector("summary").textContent = bad ? `▲ OUTSIDE: ${head}` : head;
  box.querySelector("div").replaceChildren(
    ...takeDown(view),
    ...[...broken, ...(answer.parallel ? ["The top course is cut along the ridge: nail or clip every unit of it."] : []), ...slope.re_gauge.notes].map((line) => element("p", line)),
  );
}

// What is nailed where a limit is broken, though the rest above it fits: the lowest of it, and all that is nailed above.
function mustNotStay({ slope, rods, s }) {
  const wrong = rods.flatMap((rod) => rod.filter((row) => row.kept && row.fault).map((row) => Number(row.name)));
  if (wrong.length === 0) return [];
  const [lowest, last] = [Math.min(...wrong), kept.now.kept[s][0].length];
  const which = lowest === last ? `${capital(slope.word)} ${last}` : `${capital(slope.word)}s ${lowest} to ${last}`;
  const fewer = kept.now.kept[s].map((marks) => marks.slice(0, lowest - 1));
  return [
    element("p", `${which} must not stay there: take ${lowest === last ? "it" : "them"} down before you go on.`),
    ...(lowest === 1 ? [] : [element("button", `Set out from ${slope.word} ${lowest - 1}`, { type: "button", onclick: () => standAt(here().view, fewer, String(lowest)) })]),
  ];
}

// Each fault of a mark once, at the rod where it is worst.
function marksBroken(view) {
  const worst = new Map();
  view.rods.forEach((rod, place) => rod.filter((row) => row.fault).forEach((row) => {
    const key = `${row.name} ${row.fault.what}`;
    if (!worst.has(key) || less(worst.get(key).row.fault.by, row.fault.by)) worst.set(key, { row, place });
  }));
  return [...worst.values()].map(({ row, place }) => `${capital(rowName(view, row))}: ${faultSaid(row.fault)}, at rod ${place + 1}.`);
}

function endsBroken(view) {
  const { word, re_gauge: limits } = view.slope;
  const says = {
    "top-too-high": (by) => `▲ The top ${word} is ${by} too near the apex: it fouls the ridge fixing.`,
    "top-too-low": (by) => `▲ The top ${word} is ${by} too far below the apex: the ridge may not cover its heads.`,
    "ridge-lap-short": (by) => `▲ The ridge's LAP IS SHORT by ${by}: use a wider ridge, or a flashing below it.`,
    "overhang-short": (by) => `▲ The overhang is ${by} short: water may run back behind the gutter.`,
    "overhang-long": (by) => `▲ The overhang is ${by} too long: water may shoot over the gutter.`,
  };
  return endsOutside(limits, step, view.answer).map((fault) => says[fault.end](shownFine(fault.by, job.unit, "up")));
}

function takeDown(view) {
  const { answer, slope, s } = view;
  if (!answer.takenDown) {
    if (answer.how !== "none") return mustNotStay(view);
    return [element("p", "None of these taken down mends it: set the slope out afresh before you go on.")];
  }
  const { count, from } = answer.takenDown;
  const fewer = kept.now.kept[s].map((marks) => marks.slice(0, from));
  return [
    element("p", `Take down ${count === 1 ? `the last ${slope.word}` : `the last ${count} ${slope.word}s`}: the rest then fits from ${slope.word} ${from}.`),
    element("button", `Set out from ${slope.word} ${from}`, { type: "button", onclick: () => standAt(here().view, fewer, String(from + 1)) }),
  ];
}

begin();
