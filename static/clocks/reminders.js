// What calls a person back to the bench: a sound, the phone's buzz, a sentence read out, a screen that stays awake.

const TONES = [880, 1175, 880, 1175, 1568];
const TONE_SECONDS = 0.22;
const BUZZ = [500, 150, 500, 150, 800];
const BETWEEN_ANNOUNCEMENTS = 1000;

/**
 * Make the reminders of a page. Sound starts silent: the first `unlock` from a tap frees it.
 * @param {{page?: Document, device?: Navigator, now?: () => number}} parts
 */
export function createReminders({ page = document, device = navigator, now = () => Date.now() } = {}) {
  let audio = null;
  let lock = null;
  let wanted = false;
  const speaker = page.body.appendChild(Object.assign(page.createElement("p"), { className: "visually-hidden" }));
  speaker.setAttribute("role", "alert");
  const announce = onceASecond((text) => {
    speaker.textContent = text;
  }, now);

  async function holdScreen() {
    if (!wanted || lock || page.visibilityState !== "visible" || !device.wakeLock) return;
    try {
      lock = await device.wakeLock.request("screen");
    } catch {
      // Low battery or a policy may refuse it: the clocks do not depend on it.
      return;
    }
    lock.addEventListener("release", () => {
      lock = null;
    });
    if (!wanted) lock.release();
  }

  page.addEventListener("visibilitychange", () => {
    if (page.visibilityState !== "visible") return;
    holdScreen();
    audio?.resume();
  });

  return {
    announce,
    /** Free the sound; call it from any tap. */
    unlock() {
      const Audio = globalThis.AudioContext;
      if (!Audio) return;
      audio ??= new Audio();
      if (audio.state !== "running") audio.resume();
    },
    /** Sound and buzz, and say a sentence. */
    ring(sentence) {
      announce(sentence);
      device.vibrate?.(BUZZ);
      if (audio?.state === "running") playTones(audio, TONES);
    },
    /** One tone and a short buzz, for a prompt within a stage. */
    nudge() {
      device.vibrate?.(150);
      if (audio?.state === "running") playTones(audio, [TONES[0]]);
    },
    /** Keep the screen awake from now on, or let it sleep; asked anew whenever the page comes back. */
    stayAwake(awake) {
      wanted = awake;
      if (awake) holdScreen();
      else lock?.release();
    },
    /** Whether this phone can keep its screen awake for a page. */
    canStayAwake: Boolean(device.wakeLock),
    /** Whether a ring can be heard, as far as a page can know. */
    get isAudible() {
      return audio?.state === "running";
    },
  };
}

function playTones(audio, tones) {
  tones.forEach((frequency, index) => {
    const from = audio.currentTime + index * TONE_SECONDS;
    const gain = audio.createGain();
    const tone = audio.createOscillator();
    tone.type = "square";
    tone.frequency.value = frequency;
    gain.gain.setValueAtTime(0.0001, from);
    gain.gain.exponentialRampToValueAtTime(0.6, from + 0.02);
    gain.gain.exponentialRampToValueAtTime(0.0001, from + TONE_SECONDS - 0.02);
    tone.connect(gain).connect(audio.destination);
    tone.start(from);
    tone.stop(from + TONE_SECONDS);
  });
}

/** Say at most one thing a second; what comes faster waits and is said together. */
export function onceASecond(say, now) {
  let waiting = [];
  let last = -Infinity;
  let timer = null;
  const speak = () => {
    timer = null;
    last = now();
    say(waiting.join(" "));
    waiting = [];
  };
  return (text) => {
    if (waiting.includes(text)) return;
    waiting.push(text);
    if (timer === null) timer = setTimeout(speak, Math.max(0, last + BETWEEN_ANNOUNCEMENTS - now()));
  };
}
