// Tapping a plan: a tap adds a corner, a drag moves one, a tap on a wall makes it a gable or a slope.
// It only fills in fields of the form; what comes of them the server draws.
"use strict";
document.documentElement.classList.add("taps");

const field = (name) => document.querySelector(`#form [name="${name}"]`);
const corners = () => field("corners").value.split(" ").filter(Boolean).map((each) => each.split(",").map(Number));

function send(points) {
  field("corners").value = points.map((point) => point.map((part) => Math.round(part * 10) / 10).join(",")).join(" ");
  field("corners").dispatchEvent(new CustomEvent("typed", { bubbles: true }));
  ask();
}

// A button drawn a moment ago is not yet listened to: pressed now it would send the whole page away.
function ask() {
  const tapped = document.getElementById("tapped");
  if (tapped.dataset.htmxPowered) tapped.click();
  else setTimeout(ask, 10);
}

// Where on plan a finger is, brought onto the grid, or square to the corners next to it.
function placed(plan, event, beside) {
  const of = plan.dataset;
  const at = new DOMPoint(event.clientX, event.clientY).matrixTransform(plan.getScreenCTM().inverse());
  const raw = [Number(of.leftMm) + at.x * of.mmPerUnit, Number(of.topMm) - at.y * of.mmPerUnit];
  return raw.map((part, axis) => {
    const square = beside.map((point) => point[axis]).find((other) => Math.abs(other - part) < 0.75 * of.snapMm);
    return square ?? Math.round(part / of.snapMm) * of.snapMm;
  });
}

function inDrawing(plan, [x, y]) {
  return [(x - plan.dataset.leftMm) / plan.dataset.mmPerUnit, (plan.dataset.topMm - y) / plan.dataset.mmPerUnit];
}

// While a corner is dragged it and its two walls go along; everything else waits for the server.
function shift(plan, at, count, point) {
  const [x, y] = inDrawing(plan, point);
  const set = (line, ends) => Object.entries(ends).forEach(([name, value]) => line.setAttribute(name, value));
  plan.querySelectorAll(`[data-corner="${at}"] circle`).forEach((each) => set(each, { cx: x, cy: y }));
  plan.querySelectorAll(`[data-corner="${at}"] text`).forEach((each) => set(each, { x, y }));
  plan.querySelectorAll(`[data-wall="${at + 1}"] line`).forEach((each) => set(each, { x1: x, y1: y }));
  plan.querySelectorAll(`[data-wall="${at || count}"] line`).forEach((each) => set(each, { x2: x, y2: y }));
}

let drag = null;
function dragged(event) {
  return drag?.pointer === event.pointerId ? drag : null;
}
function dragEnds() {
  const plan = document.getElementById("plan");
  if (drag?.moved && plan) shift(plan, drag.at, drag.points.length, drag.stood);
  drag = null;
}
document.addEventListener("pointerdown", (event) => {
  const corner = event.target.closest?.("#plan [data-corner]");
  if (!corner || !event.isPrimary || event.button !== 0) return;
  const points = corners();
  const at = Number(corner.dataset.corner);
  drag = { at, points, stood: points[at], pointer: event.pointerId, from: [event.clientX, event.clientY], moved: false };
  corner.setPointerCapture(event.pointerId);
  event.preventDefault();
});
document.addEventListener("pointermove", (event) => {
  const now = dragged(event);
  if (!now) return;
  if (event.pointerType === "mouse" && !event.buttons) { dragEnds(); return; }
  const plan = document.getElementById("plan");
  const { at, points } = now;
  now.moved ||= Math.hypot(event.clientX - now.from[0], event.clientY - now.from[1]) > 8;
  if (!now.moved) return;
  points[at] = placed(plan, event, [points.at(at - 1), points[(at + 1) % points.length]]);
  shift(plan, at, points.length, points[at]);
});
document.addEventListener("pointerup", (event) => {
  const done = dragged(event);
  if (!done) return;
  drag = null;
  if (done.moved) send(done.points);
});
document.addEventListener("pointercancel", (event) => { if (dragged(event)) dragEnds(); });

document.addEventListener("click", (event) => {
  const plan = event.target.closest?.("#plan");
  if (!plan || event.target.closest("[data-corner]")) return;
  const wall = event.target.closest("[data-wall]");
  const points = corners();
  if (!wall || points.length < 3) {
    const ends = points.length ? [points.at(-1), points[0]] : [];
    send([...points, placed(plan, event, ends)]);
    return;
  }
  const stands = field(`wall[${wall.dataset.wall - 1}].stands`);
  stands.value = stands.value === "gable" ? "slope" : "gable";
  stands.dispatchEvent(new Event("input", { bubbles: true }));
  stands.dispatchEvent(new Event("change", { bubbles: true }));
});
