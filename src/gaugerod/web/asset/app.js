// What the pages cannot do without a script: a slider that is moved is held, and says where it stands; nothing typed or tapped
// is lost.
"use strict";
document.addEventListener("input", (event) => {
  const slider = event.target;
  if (!(slider instanceof HTMLInputElement) || !slider.dataset.holds) return;
  const hold = document.getElementById(slider.dataset.holds);
  if (hold) hold.checked = true;
  for (const said of document.querySelectorAll(`output[for="${slider.id}"]`)) said.textContent = slider.value;
}, true);

// After a form with faults the list of them is read out first; what the form holds is not saved yet.
document.addEventListener("DOMContentLoaded", () => {
  const faults = document.getElementById("faults");
  if (!faults) return;
  faults.focus();
  const form = document.getElementById("form");
  if (keeps(form)) unsaved.add(nameOf(form));
});

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
  press = { on: event.target, id: event.pointerId };
  press.lifted = new Promise((lift) => { press.lift = lift; });
}, true);
for (const end of ["pointerup", "pointercancel"]) {
  document.addEventListener(end, (event) => {
    if (event.pointerId === press?.id) setTimeout(pressEnds, CLICK_AFTER_LIFT_MS, press);
  }, true);
}
// A lift that was never told: the mouse moves with no button down, or the window is left.
document.addEventListener("pointermove", (event) => { if (event.pointerType === "mouse" && !event.buttons) pressEnds(press); }, true);
window.addEventListener("blur", () => pressEnds(press));

// What is typed or chosen while an answer is on its way is put back into what the answer draws, and asked about anew.
const asked = new WeakMap();
const fieldsOf = (part) => [...part.querySelectorAll("input:not([type=hidden], [type=file]), select, textarea")].filter((each) => each.name);
const ticked = (field) => field.type === "checkbox" || field.type === "radio";
const keyOf = (field) => (ticked(field) ? `${field.name}=${field.value}` : field.name);
const saidBy = (field) => (ticked(field) ? field.checked : field.value);
function said(part) {
  return new Map(fieldsOf(part).map((field) => [keyOf(field), saidBy(field)]));
}
function putBack(part, { changed, focus }) {
  let last = null;
  for (const field of fieldsOf(part)) {
    const was = changed.get(keyOf(field));
    if (was === undefined || was === saidBy(field)) continue;
    if (ticked(field)) field.checked = was; else field.value = was;
    if (saidBy(field) === was) last = field;
  }
  const again = focus.id && document.getElementById(focus.id);
  if (again && document.activeElement !== again) {
    again.focus({ preventScroll: true });
    if (focus.from !== null && again.setSelectionRange) again.setSelectionRange(focus.from, focus.to);
  }
  // A moment later, for the part that was drawn anew is only then listened to.
  if (last) setTimeout(() => last.dispatchEvent(new Event("input", { bubbles: true })), 20);
}
document.addEventListener("htmx:before:request", ({ detail: { ctx } }) => {
  asked.set(ctx, said(ctx.target));
  ctx.fetch = async (...asking) => {
    const response = await fetch(...asking);
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
document.addEventListener("htmx:before:swap", ({ detail: { ctx } }) => {
  const before = asked.get(ctx);
  if (!before || !ctx.target.isConnected) return;
  const on = document.activeElement;
  const inside = ctx.target.contains(on);
  const moved = ctx.sourceElement?.dataset.renumbers;  // fields of these names stand elsewhere in the answer
  const kept = {
    changed: new Map([...said(ctx.target)].filter(([key, now]) => before.has(key) && before.get(key) !== now && !(moved && key.startsWith(moved)))),
    focus: { id: inside ? on.id : "", from: inside ? on.selectionStart ?? null : null, to: inside ? on.selectionEnd ?? null : null },
  };
  // At the very moment the new part stands, before another key can be pressed.
  const { target } = ctx;
  const drawn = new MutationObserver(() => {
    const part = document.getElementById(target.id);
    if (!part?.hasChildNodes()) return;
    drawn.disconnect();
    putBack(part, kept);
  });
  drawn.observe(target.parentNode, { childList: true });
  drawn.observe(target, { childList: true });
});

// No answer came: said where the old one stands, until a newer one takes its place.
document.addEventListener("htmx:error", ({ detail: { ctx } }) => {
  if (!ctx?.target?.isConnected || ctx.target.querySelector(".unanswered")) return;
  const told = document.createElement("p");
  told.className = "alarm unanswered";
  told.setAttribute("role", "status");
  told.textContent = "▲ No answer came. What stands here is older than what you typed. Type again when the connection is back.";
  (ctx.target.querySelector("#answer") ?? ctx.target).prepend(told);
});

// What was typed and not saved is not left without a word. Sliders are there to be tried out, and are left freely.
const unsaved = new Set();
const nameOf = (form) => form.id || form.getAttribute("action");
const keeps = (form) => form?.method === "post" && !form.matches(".lights, .wishes");
for (const typed of ["input", "typed"]) {
  document.addEventListener(typed, ({ target }) => { if (keeps(target.form)) unsaved.add(nameOf(target.form)); }, true);
}
document.addEventListener("submit", ({ target }) => { unsaved.delete(nameOf(target)); });
window.addEventListener("beforeunload", (event) => { if (unsaved.size) event.preventDefault(); });

// Daylight or night at once, on the page as it stands.
function showLight(button, light) {
  const next = light === "day" ? "night" : "day";
  button.value = next;
  button.innerHTML = next === "night" ? '<span aria-hidden="true">☾</span> Night' : '<span aria-hidden="true">☀</span> Daylight';
}
document.addEventListener("DOMContentLoaded", () => {
  const button = document.querySelector(".lights button");
  if (!button) return;
  const light = document.documentElement.dataset.light;
  showLight(button, light === "auto" ? (matchMedia("(prefers-color-scheme: light)").matches ? "day" : "night") : light);
  button.form.addEventListener("submit", (event) => {
    event.preventDefault();
    const to = button.value;
    const told = new URLSearchParams(new FormData(button.form));
    told.set("light", to);
    fetch(button.form.action, { method: "POST", body: told, redirect: "manual" });
    document.documentElement.dataset.light = to;
    document.querySelector('meta[name="color-scheme"]').content = to === "day" ? "light" : "dark";
    showLight(button, to);
  });
});
