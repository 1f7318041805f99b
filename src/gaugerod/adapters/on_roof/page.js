// The page: one mark at a time, next and back by thumb, ticks, and setting out again.
"use strict";

const job = JSON.parse(document.getElementById("data").textContent);
const step = fromText(job.step);
const kept = keeping(job.fingerprint, storeOf(window), { view: null, row: {}, ticked: [], kept: {} });
const the = (id) => document.getElementById(id);
let aloud = false;

function storeOf(window) {
  try {
    return window.localStorage;
  } catch {
    return null; // refused by the phone's settings
  }
}

function element(tag, text, { parts = [], ...set } = {}) {
  const made = Object.assign(document.createElement(tag), set);
  if (text) made.textContent = text;
  made.append(...parts);
  return made;
}

const show = (id, text) => {
  the(id).hidden = !text;
  the(id).textContent = text || "";
};
const capital = (text) => text.charAt(0).toUpperCase() + text.slice(1);

// What can be looked at: every rod that differs, then every line of perps, slope by slope.
function views() {
  return job.slopes.flatMap((slope, s) => {
    const { answer, rods } = kept.now.kept[s] ? rodsAgain(slope, step, kept.now.kept[s]) : { answer: null, rods: rodsAsSent(slope) };
    const groups = sharedRods(rods).map((group) => ({
      slope, s, answer, rods, group, rows: rods[group[0]], name: rodName(slope, group), keys: group.map((rod) => `${s}/rod ${rod}`),
    }));
    const lines = slope.across.lines.map((line) => ({
      slope, s, answer, rods, line, rows: perpRows(line), name: `perps at the ${line.line}`, keys: [`${s}/${line.line}`],
    }));
    return [...groups, ...lines];
  });
}

function rodName(slope, group) {
  const numbers = group.map((rod) => rod + 1);
  if (numbers.length === slope.rods.length) return numbers.length > 1 ? "the same rod everywhere" : "the rod";
  return `rod ${numbers.join(" and ")}, ${group.map((rod) => along(slope, rod)).join(" and ")}`;
}

const along = (slope, rod) => (slope.rods[rod].at_mm === 0 ? "left end" : `${shown(fromMm(slope.rods[rod].at_mm), job.unit)} along`);

const perpRows = (line) => line.marks_mm.map((mark, at) => ({
  name: String(at + 1),
  mark: fromMm(mark),
  gap: at ? minus(fromMm(mark), fromMm(line.marks_mm[at - 1])) : null,
  units: line.units[at],
}));

// Where we are: a view, and a row of it.
function here() {
  const all = views();
  const view = all.find((each) => each.keys.includes(kept.now.view)) || all[0];
  const found = view.rows.findIndex((row) => row.name === kept.now.row[view.keys[0]]);
  const at = found < 0 ? 0 : found;
  return { all, view, at, row: view.rows[at] };
}

const tickKey = (key, row) => `${key}/${row.name}`;
const isDone = (view, row) => Boolean(row.kept) || kept.now.ticked.includes(tickKey(view.keys[0], row));
const goTo = (view, at) => ({ view: view.keys[0], row: { ...kept.now.row, ...Object.fromEntries(view.keys.map((key) => [key, view.rows[at].name])) } });

function rowName(view, row) {
  if (view.line) return `perp ${row.name}`;
  return { [UNDER_EAVES]: "under-eaves course", [SHORT]: "short top course" }[row.name] || `${view.slope.word} ${row.name}`;
}

function draw({ read = false } = {}) {
  the("again-says").open = false; // read once, it leaves the room to the mark
  const { all, view, at, row } = here();
  drawChoice(all, view);
  drawTold(view);
  drawAgainSays(view);
  drawReading(view, at, row);
  drawStrip(view, at);
  drawThumb(view, at, row);
  drawSoFar(all, view);
  drawAgain(view, row);
  drawAll(view, at);
  if (read && aloud) speak(sentence(view, row));
}

function drawChoice(all, view) {
  const groups = job.slopes.map((slope, s) => element("optgroup", "", {
    label: capital(slope.name),
    parts: all.filter((each) => each.s === s).map((each) => element("option", `${capital(slope.name)}: ${each.name}`, {
      value: each.keys[0], selected: each === view,
    })),
  }));
  the("which").replaceChildren(...groups);
}

function drawTold(view) {
  const told = job.findings.filter((each) => each.slope === "" || each.slope === view.slope.name);
  const outside = told.filter((each) => each.verdict === "outside");
  const open = told.filter((each) => each.verdict !== "outside");
  const words = [
    ...job.not_set_out.map((each) => `▲ ${capital(each.name)} is NOT SET OUT`),
    ...(outside.length ? [`▲ OUTSIDE: ${listed(outside)}`] : []),
    ...(open.length ? [`◇ ${open.length} not covered by a rule`] : []),
  ];
  const box = the("told");
  box.hidden = !words.length;
  box.classList.toggle("bad", words.some((word) => word.startsWith("▲")));
  box.querySelector("summary").replaceChildren(element("span", "", { parts: words.map((word) => element("span", word)) }));
  const heads = { outside: "▲ OUTSIDE", "not-covered": "◇ Not covered" };
  box.querySelector("div").replaceChildren(
    ...job.not_set_out.map((each) => element("p", `${capital(each.name)}: ${each.why}`)),
    ...[...outside, ...open].map((each) => element("p", "", { parts: [element("b", `${heads[each.verdict]}: ${each.rule}. `), each.says] })),
  );
}

const listed = (findings) => [...new Set(findings.map((each) => each.rule.replace(/ \(.*/, "").toLowerCase()))].join("; ");

function drawReading(view, at, row) {
  const of = isFull(row) ? ` of ${view.rows.filter(isFull).length}` : "";
  the("name").textContent = capital(rowName(view, row)) + of;
  const parts = shownParts(row.mark, job.unit);
  const room = parts.figure.length + parts.part.length / 2;
  the("mark").style.setProperty("--letters", String(Math.max(room, 4)));
  the("mark").replaceChildren(
    parts.figure,
    ...(parts.part ? [element("span", ` ${parts.part}`, { className: "part" })] : []),
    element("span", job.unit === "ft-in" ? parts.unit : ` ${parts.unit}`, { className: "unit" }),
  );
  the("gap").replaceChildren(...besides(view, at, row).map((text) => element("span", text)));
  show("fault", row.fault && faultSaid(row.fault));
  show("state", row.kept ? "✓ nailed already" : isDone(view, row) ? "✓ ticked off" : "");
}

const faultSaid = (fault) => `▲ ${fault.what} by ${shownFine(fault.by, job.unit, "up")}`;

function besides(view, at, row) {
  if (view.line) return [at ? `${shownFine(row.gap, job.unit, "near")} on from perp ${at}` : "from the left end", `after ${row.units} units`];
  const below = at ? `${shown(row.gap, job.unit)} above ${at === 1 && !isFull(view.rows[0]) ? "the " : ""}${rowName(view, view.rows[at - 1])}` : `${view.slope.read}, up from the fascia face`;
  return [
    below,
    ...(row.lap ? [`laps ${shownFine(row.lap, job.unit, "down")}`] : []),
    ...(row.unit ? [`units ${shown(row.unit, job.unit)} long`] : []),
  ];
}

const sentence = (view, row) => `${capital(rowName(view, row))}. ${said(row.mark, job.unit)}.${row.fault ? ` Mind: ${row.fault.what.toLowerCase()}.` : ""}`;

// The rod itself, drawn to scale beside its numbers.
function drawStrip(view, at) {
  const strip = the("strip");
  const [first, last] = [view.rows[0], view.rows[view.rows.length - 1]].map((row) => toNumber(row.mark));
  strip.classList.toggle("across", Boolean(view.line));
  strip.replaceChildren(...view.rows.map((row, each) => {
    const line = element("li", "", { className: [isDone(view, row) && "done", each === at && "here", row.fault && "bad"].filter(Boolean).join(" ") });
    line.style.setProperty("--up", `${last > first ? (100 * (toNumber(row.mark) - first)) / (last - first) : 0}%`);
    return line;
  }));
}

function drawThumb(view, at, row) {
  the("back").disabled = at === 0;
  the("next").disabled = at === view.rows.length - 1;
  for (const [id, up, across] of [["back", "▼", "◀"], ["next", "▲", "▶"]]) the(id).querySelector("span").textContent = view.line ? across : up;
  the("tick").disabled = Boolean(row.kept);
  the("tick").replaceChildren(element("span", isDone(view, row) ? "✗" : "✓", { ariaHidden: "true" }), isDone(view, row) && !row.kept ? "Untick" : "Tick off");
  the("undo").disabled = !kept.canUndo;
  the("aloud").setAttribute("aria-pressed", String(aloud));
}

function drawSoFar(all, view) {
  const done = (each) => each.rows.filter((row) => isDone(each, row)).length;
  const total = (count) => all.reduce((sum, each) => sum + count(each), 0);
  const counts = `${done(view)} of ${view.rows.length} done here, ${total(done)} of ${total((each) => each.rows.length)} on the whole job.`;
  the("so-far").textContent = kept.lasts ? counts : `▲ This phone does not keep your ticks: leave this page open, or they are lost. ${counts}`;
}

function drawAll(view, at) {
  the("all-how").textContent = view.line
    ? view.slope.across.says.join(" ")
    : `Each mark is the ${view.slope.read}, up the slope from the outer face of the fascia. Hook on once and read every mark from there; the gap is for checking only.`;
  the("all").replaceChildren(...view.rows.map((row, each) => element("li", "", {
    parts: [element("button", "", {
      type: "button",
      ariaCurrent: each === at ? "true" : null,
      onclick: () => {
        kept.go(goTo(view, each));
        draw({ read: true });
        scrollTo(0, 0);
      },
      parts: [
        element("span", capital(rowName(view, row))),
        element("b", shown(row.mark, job.unit)),
        element("span", [row.fault && faultSaid(row.fault), isDone(view, row) && "✓"].filter(Boolean).join(" "), { className: row.fault ? "bad" : "" }),
      ],
    })],
  })));
}

function moveBy(way) {
  const { view, at } = here();
  const to = at + way;
  if (to < 0 || to >= view.rows.length) return;
  kept.go(goTo(view, to));
  draw({ read: true });
}

function tick() {
  const { view, at, row } = here();
  const keys = view.keys.map((key) => tickKey(key, row));
  if (isDone(view, row)) {
    kept.change({ ticked: kept.now.ticked.filter((key) => !keys.includes(key)) });
  } else {
    const on = goTo(view, Math.min(at + 1, view.rows.length - 1));
    kept.change({ ...on, ticked: [...kept.now.ticked, ...keys] });
  }
  draw({ read: true });
}

function drawLight() {
  const [sign, word] = isDay() ? ["☾", "Night"] : ["☀", "Daylight"];
  the("light").replaceChildren(element("span", sign, { ariaHidden: "true" }), word);
}

function begin() {
  the("plain").classList.add("print-only");
  if (!job.slopes.length) {
    the("plain").classList.remove("print-only"); // nothing is set out: the tables say why
    return;
  }
  the("roof").hidden = false;
  the("light").hidden = false;
  the("cautions").replaceChildren(...job.cautions.map((caution) => element("li", caution)));
  the("made").textContent = `${job.covering}. Made ${job.made_at}, edition ${job.edition}, gaugerod ${job.version}. Lay from the newest sheet of this job only.`;
  the("back").onclick = () => moveBy(-1);
  the("next").onclick = () => moveBy(1);
  the("tick").onclick = tick;
  the("undo").onclick = () => {
    kept.undo();
    draw({ read: true });
  };
  the("aloud").disabled = !canSpeak();
  if (!canSpeak()) the("aloud").textContent = "No voice here";
  the("aloud").onclick = () => {
    aloud = !aloud;
    if (!aloud) speechSynthesis.cancel();
    draw({ read: true });
  };
  the("which").onchange = () => {
    kept.go({ view: the("which").value });
    draw({ read: true });
  };
  the("light").onclick = () => {
    document.documentElement.dataset.light = isDay() ? "night" : "day";
    drawLight();
  };
  the("to-again").onclick = () => the("again").focus();
  the("again-form").onsubmit = (event) => {
    event.preventDefault();
    setOutAgain();
  };
  the("as-sent").onclick = () => standAt(here().view, null);
  keepScreenLit((lit) => {
    the("screen").textContent = lit ? "The screen stays lit while this page is open." : "The screen may go dark by itself: give it longer in the phone's settings.";
  });
  drawLight();
  draw();
}
