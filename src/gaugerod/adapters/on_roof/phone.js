// What a phone may do besides: keep its screen lit, read aloud, show daylight or night.
"use strict";

// Asks for the screen to stay lit, again whenever the page comes back; tells `say` whether it does.
function keepScreenLit(say) {
  if (!navigator.wakeLock) {
    say(false);
    return;
  }
  const ask = async () => {
    if (document.visibilityState !== "visible") return;
    try {
      const lock = await navigator.wakeLock.request("screen");
      say(true);
      lock.addEventListener("release", () => say(false));
    } catch {
      say(false);
    }
  };
  document.addEventListener("visibilitychange", ask);
  ask();
}

const canSpeak = () => "speechSynthesis" in window && "SpeechSynthesisUtterance" in window;

function speak(text) {
  const spoken = new SpeechSynthesisUtterance(text);
  spoken.lang = "en-GB";
  spoken.rate = 0.9;
  speechSynthesis.cancel();
  speechSynthesis.speak(spoken);
}

const isDay = () => {
  const wanted = document.documentElement.dataset.light;
  return wanted === "auto" ? !matchMedia("(prefers-color-scheme: dark)").matches : wanted === "day";
};
