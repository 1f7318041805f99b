// What the pages cannot do without a script: a slider that is moved is held, and says where it stands.
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
