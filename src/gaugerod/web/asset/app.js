// What the pages cannot do without a script: a slider that is moved is held, and says where it stands; no tap is lost.
"use strict";
document.addEventListener("input", (event) => {
  const slider = event.target;
  if (!(slider instanceof HTMLInputElement) || !slider.dataset.holds) return;
  const hold = document.getElementById(slider.dataset.holds);
  if (hold) hold.checked = true;
  for (const said of document.querySelectorAll(`output[for="${slider.id}"]`)) said.textContent = slider.value;
}, true);

// After a form with faults the list of them is read out first.
document.addEventListener("DOMContentLoaded", () => document.getElementById("faults")?.focus());

// What is pressed stays until the finger is lifted and its click has come: an answer drawn in between would lose the tap.
const CLICK_AFTER_LIFT_MS = 50;
let press = null;
function pressEnds(ended) {
  if (press === ended) press = null;
  ended?.lift();
}
document.addEventListener("pointerdown", (event) => {
  if (!event.isPrimary || event.button !== 0) return;
  pressEnds(press);
  press = { on: event.target };
  press.lifted = new Promise((lift) => { press.lift = lift; });
}, true);
for (const end of ["pointerup", "pointercancel"]) {
  document.addEventListener(end, () => { setTimeout(pressEnds, CLICK_AFTER_LIFT_MS, press); }, true);
}
document.addEventListener("htmx:before:request", ({ detail: { ctx } }) => {
  ctx.fetch = async (...asked) => {
    const response = await fetch(...asked);
    const text = response.text.bind(response);
    response.text = async () => {
      const answer = await text();
      while (press && ctx.target.contains(press.on)) await press.lifted;
      ctx.request.signal.throwIfAborted();
      return answer;
    };
    return response;
  };
});
